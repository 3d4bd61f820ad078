import { scaleLinear } from 'd3-scale';

import type { StageErrors } from './stageErrors.ts';

/** Turn error, edge error and the fit's residual over the turn: three panels, one above the other. */
const WIDTH = 900;
const PANEL = { left: 70, right: 20, height: 150, gap: 46, top: 50 } as const;

interface Panel {
  readonly title: string;
  readonly unit: string;
  readonly values: ArrayLike<number>;
}

export function stageSvg(name: string, errors: StageErrors): string {
  const panels: Panel[] = [
    { title: 'turn, read less true', unit: '°', values: errors.turnErrorDeg },
    {
      title: 'edge height, read less true, mean of a picture',
      unit: 'mm',
      values: errors.edgeMeanMm,
    },
    { title: 'residual of the fit, rms of a picture', unit: 'mm', values: errors.residualMm },
  ];
  const height = PANEL.top + panels.length * (PANEL.height + PANEL.gap);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" font-family="sans-serif" font-size="13">`,
    `<rect width="${WIDTH}" height="${height}" fill="#fff"/>`,
    `<text x="${PANEL.left}" y="24" font-size="17">${escapeText(name)}: errors over the turn</text>`,
    ...panels.map((panel, i) => panelSvg(panel, errors.turnDeg, i)),
    '</svg>',
    '',
  ].join('\n');
}

function panelSvg(panel: Panel, turnDeg: ArrayLike<number>, index: number): string {
  const top = PANEL.top + index * (PANEL.height + PANEL.gap);
  const bottom = top + PANEL.height;
  const x = scaleLinear(rangeOf(turnDeg), [PANEL.left, WIDTH - PANEL.right]);
  const y = scaleLinear(rangeOf([0, ...Array.from(panel.values)]), [bottom, top]).nice(5);
  const grid = y.ticks(5).map((tick) => {
    const at = y(tick).toFixed(1);
    return (
      `<line x1="${PANEL.left}" x2="${WIDTH - PANEL.right}" y1="${at}" y2="${at}" stroke="${tick === 0 ? '#777' : '#ddd'}"/>` +
      `<text x="${PANEL.left - 8}" y="${at}" text-anchor="end" dominant-baseline="middle">${tick}</text>`
    );
  });
  const marks = x.ticks(9).map((tick) => {
    const at = x(tick).toFixed(1);
    return (
      `<line x1="${at}" x2="${at}" y1="${bottom}" y2="${bottom + 5}" stroke="#777"/>` +
      `<text x="${at}" y="${bottom + 19}" text-anchor="middle">${tick}°</text>`
    );
  });
  const dots: string[] = [];
  for (let i = 0; i < panel.values.length; i++) {
    if (panel.values[i] !== panel.values[i] || turnDeg[i] !== turnDeg[i]) continue;
    dots.push(`M${x(turnDeg[i]).toFixed(1)} ${y(panel.values[i]).toFixed(1)}h0`);
  }
  return [
    ...grid,
    ...marks,
    `<text x="${PANEL.left}" y="${top - 8}">${panel.title}, ${panel.unit}</text>`,
    `<text x="${WIDTH - PANEL.right}" y="${bottom + 34}" text-anchor="end">true turn</text>`,
    `<path d="${dots.join('')}" stroke="#0a6" stroke-width="3" stroke-linecap="round" fill="none"/>`,
  ].join('\n');
}

function rangeOf(values: ArrayLike<number>): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < values.length; i++) {
    if (values[i] < low) low = values[i];
    if (values[i] > high) high = values[i];
  }
  return low < high ? [low, high] : [low - 1, low + 1];
}

function escapeText(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}
