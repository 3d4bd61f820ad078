import type { CameraPose } from './camera.ts';
import { cameraFromPose } from './camera.ts';
import { cylinderPointAtPixel } from './cylinder.ts';

/**
 * A stretch of tread as it was seen to move: from one pixel to another while the wheel turned by a
 * known angle. A camera that is right sees the two as far apart round the axis.
 */
export interface TurnedSpan {
  readonly fromPx: readonly [number, number];
  readonly toPx: readonly [number, number];
  /** Radius of the tread there, mm. */
  readonly radiusMm: number;
  /** Turn that went with it, degrees clockwise, and its standard deviation. */
  readonly turnDeg: number;
  readonly sdDeg: number;
}

/** Passing by the wheel altogether is as wrong as so many standard deviations. */
const PASSED_BY = 30;

/**
 * By how many standard deviations each span misses its turn in a camera of this pose. Before the turn
 * has closed only how fast the parts of the picture go by beside each other is known: with
 * `isScaleOpen` all turns are taken longer or shorter by the factor that suits the pose best.
 */
export function spanResiduals(
  spans: readonly TurnedSpan[],
  pose: CameraPose,
  isScaleOpen = false,
): Float64Array {
  const camera = cameraFromPose(pose);
  const seenDeg = Float64Array.from(spans, ({ fromPx, toPx, radiusMm }) => {
    const from = cylinderPointAtPixel(camera, radiusMm, ...fromPx);
    const to = cylinderPointAtPixel(camera, radiusMm, ...toPx);
    return from && to ? to.bearingDeg - from.bearingDeg : NaN;
  });
  const scale = isScaleOpen ? bestScale(spans, seenDeg) : 1;
  return seenDeg.map((seen, k) => {
    const miss = (seen - scale * spans[k].turnDeg) / spans[k].sdDeg;
    return miss === miss ? Math.max(-PASSED_BY, Math.min(PASSED_BY, miss)) : PASSED_BY;
  });
}

/** Factor on all turns that leaves the least squares; spans that pass by the wheel have no say. */
function bestScale(spans: readonly TurnedSpan[], seenDeg: Float64Array): number {
  let across = 0;
  let along = 0;
  spans.forEach(({ turnDeg, sdDeg }, k) => {
    if (seenDeg[k] !== seenDeg[k]) return;
    across += (seenDeg[k] * turnDeg) / sdDeg ** 2;
    along += (turnDeg / sdDeg) ** 2;
  });
  return along > 0 ? across / along : 1;
}
