import type { PictureOverlay } from '../../contract/sweep.ts';
import { spotInPicture } from './spotInPicture.ts';

export interface SpotWayMarksProps {
  readonly overlay: PictureOverlay;
  /** Where the spot stands, degrees in [−180, 180) clockwise from the sight. */
  readonly azimuthDeg: number;
  /** Turn still to go, positive clockwise: the near side of the wheel then goes to the left. */
  readonly byDeg: number;
  readonly isAtSpot: boolean;
}

/** Over the picture: the spot on the tread, and the way on which it comes to the sight. */
export function SpotWayMarks({ overlay, azimuthDeg, byDeg, isAtSpot }: SpotWayMarksProps) {
  const { widthPx, heightPx } = overlay;
  // Past half a turn the hand may be on the longer way: the spot then comes in from the other side.
  const comesFromDeg = azimuthDeg * -byDeg >= 0 ? azimuthDeg : -180 * Math.sign(byDeg);
  const way = spotInPicture(overlay, comesFromDeg);
  if (way === null) return null;
  const unit = widthPx / 100;
  const last = way.wayPx.at(-1)!;
  const path = way.wayPx.map(({ xPx, yPx }, i) => `${i === 0 ? 'M' : 'L'}${xPx} ${yPx}`).join('');
  return (
    <svg
      className="spot-way"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      aria-hidden="true"
      focusable="false"
      data-at-spot={isAtSpot}
    >
      <path className="spot-under" d={path} />
      <path className="spot-path" d={path} />
      {way.spotPx === null ? (
        <g
          transform={`translate(${last.xPx} ${last.yPx}) scale(${byDeg > 0 ? unit : -unit} ${unit})`}
        >
          <path className="spot-arrow" d="M4 -5 L-3 0 L4 5" />
        </g>
      ) : (
        <g transform={`translate(${way.spotPx.xPx} ${way.spotPx.yPx}) scale(${unit})`}>
          <rect className="shape-weight" x={-3} y={-2} width={6} height={4} />
        </g>
      )}
    </svg>
  );
}
