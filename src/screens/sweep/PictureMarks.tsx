import type { PictureOverlay } from '../../contract/sweep.ts';
import { words } from '../words/words.ts';

/** Line, edge, sight and tape over the picture, in its own pixels; strokes keep their screen width. */
export function PictureMarks({ overlay }: { readonly overlay: PictureOverlay }) {
  const { widthPx, heightPx, sightPx, markPx } = overlay;
  // Small signs grow with the picture, so that they look the same on every camera.
  const unit = widthPx / 100;
  return (
    <svg
      className="picture-marks"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      aria-hidden="true"
      focusable="false"
    >
      <path className="mark-under" d={polyline(overlay.edgePx)} />
      <path className="mark-edge" d={polyline(overlay.edgePx)} />
      <path className="mark-under" d={polyline(overlay.linePx)} />
      <path className="mark-line" d={polyline(overlay.linePx)} />
      <g transform={`translate(${sightPx.xPx} ${sightPx.yPx}) scale(${unit})`}>
        <path className="mark-under" d="M0 -5 V-1.6 M0 1.6 V5 M-5 0 H-1.6 M1.6 0 H5" />
        <path className="mark-sight" d="M0 -5 V-1.6 M0 1.6 V5 M-5 0 H-1.6 M1.6 0 H5" />
      </g>
      {markPx !== null && (
        <g transform={`translate(${markPx.xPx} ${markPx.yPx}) scale(${unit})`}>
          <path className="mark-under" d="M0 -3 l-2 -3.4 h4 Z" />
          <path className="mark-tape" d="M0 -3 l-2 -3.4 h4 Z" />
        </g>
      )}
    </svg>
  );
}

/** Names of what is drawn; only what has been found is named. */
export function PictureLegend({ overlay }: { readonly overlay: PictureOverlay | null }) {
  if (overlay === null) return <figcaption className="picture-legend" />;
  return (
    <figcaption className="picture-legend">
      {overlay.linePx.length > 0 && <LegendItem shape="line" word={words.sweep.line} />}
      {overlay.edgePx.length > 0 && <LegendItem shape="edge" word={words.sweep.edge} />}
      <LegendItem shape="sight" word={words.sweep.sight} />
      {overlay.markPx !== null && <LegendItem shape="tape" word={words.sweep.mark} />}
    </figcaption>
  );
}

const LEGEND_PATHS = {
  line: 'M2 12 H38',
  edge: 'M2 12 H38',
  sight: 'M20 1 V8 M20 16 V23 M9 12 H16 M24 12 H31',
  tape: 'M20 20 l-8 -15 h16 Z',
} as const;

function LegendItem({
  shape,
  word,
}: {
  readonly shape: keyof typeof LEGEND_PATHS;
  readonly word: string;
}) {
  return (
    <span className="legend-item">
      <svg viewBox="0 0 40 24" aria-hidden="true" focusable="false">
        <path className={`legend-${shape}`} d={LEGEND_PATHS[shape]} />
      </svg>
      {word}
    </span>
  );
}

/** x0, y0, x1, y1, … as a path; a NaN breaks it. */
function polyline(points: Float32Array): string {
  let path = '';
  let down = false;
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = points[i]!;
    const y = points[i + 1]!;
    if (Number.isNaN(x) || Number.isNaN(y)) {
      down = false;
      continue;
    }
    path += `${down ? 'L' : 'M'}${x.toFixed(1)} ${y.toFixed(1)}`;
    down = true;
  }
  return path;
}
