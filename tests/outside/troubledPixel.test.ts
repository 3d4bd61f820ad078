import { spawnSync } from 'node:child_process';

import { describe, expect, it } from 'vitest';

import { filmGraph } from '../tools/troubles/filmGraph.ts';
import { pixelAfter } from '../tools/troubles/pixelAfter.ts';
import type { Trouble } from '../tools/troubles/trouble.ts';

const FILM = {
  ...{ name: 'spot', widthPx: 1280, heightPx: 720, durationS: 1, picturesPerS: 24 },
  laserColour: 'green',
} as const;
const FROM = { xPx: 1110, yPx: 560 };
const hasFfmpeg = spawnSync('ffmpeg', ['-version']).status === 0;

/**
 * The tap of a troubled film is worked out beside ffmpeg; here ffmpeg itself says where the point went.
 * Its filters count pixels from their own corners and middles, so half a pixel may be between them.
 */
describe.skipIf(!hasFfmpeg)('where ffmpeg puts a spot', () => {
  it.each<[string, Trouble[]]>([
    ['mirrored', [{ kind: 'mirrored' }]],
    ['rolled', [{ kind: 'roll', rollDeg: 7 }]],
    ['rolled the other way', [{ kind: 'roll', rollDeg: -5 }]],
    ['barrel', [{ kind: 'lens', radial: 0.07 }]],
    ['pincushion', [{ kind: 'lens', radial: -0.03 }]],
    [
      'all of it at half the size',
      [
        { kind: 'half-size' },
        { kind: 'mirrored' },
        { kind: 'roll', rollDeg: 6 },
        { kind: 'lens', radial: 0.05 },
      ],
    ],
  ])('%s: within a pixel of the place told', (_, troubles) => {
    const plan = { seed: 1, film: FILM, troubles };
    const told = pixelAfter(plan, FROM);
    const seen = spotThrough(filmGraph(plan), troubles.some((t) => t.kind === 'half-size') ? 2 : 1);
    expect(Math.hypot(seen.xPx - told.xPx, seen.yPx - told.yPx)).toBeLessThan(1);
    // And not because nothing moved.
    expect(Math.hypot(told.xPx - FROM.xPx, told.yPx - FROM.yPx)).toBeGreaterThan(3);
  });
});

/** Middle of a white spot on black, ten pixels wide about `FROM`, after the graph. */
function spotThrough(graph: string, smaller: number): typeof FROM {
  const { widthPx, heightPx } = FILM;
  const grey = new Uint8Array(widthPx * heightPx);
  for (let row = FROM.yPx - 5; row < FROM.yPx + 5; row++)
    grey.fill(255, row * widthPx + FROM.xPx - 5, row * widthPx + FROM.xPx + 5);
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'gray'];
  const done = spawnSync(
    'ffmpeg',
    [
      ...['-v', 'error', ...raw, '-s', `${widthPx}x${heightPx}`, '-i', '-', '-filter_complex'],
      ...[graph, '-map', '[out]', ...raw, '-'],
    ],
    { input: grey, maxBuffer: 1 << 24 },
  );
  expect(done.stderr.toString()).toBe('');
  const width = widthPx / smaller;
  let [sum, x, y] = [0, 0, 0];
  done.stdout.forEach((value, i) => {
    if (value < 64) return;
    sum += value;
    x += value * ((i % width) + 0.5);
    y += value * (Math.floor(i / width) + 0.5);
  });
  return { xPx: x / sum, yPx: y / sum };
}
