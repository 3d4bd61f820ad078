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

/** By how many standard deviations each span misses its turn in a camera of this pose. */
export function spanResiduals(spans: readonly TurnedSpan[], pose: CameraPose): Float64Array {
  const camera = cameraFromPose(pose);
  return Float64Array.from(spans, ({ fromPx, toPx, radiusMm, turnDeg, sdDeg }) => {
    const from = cylinderPointAtPixel(camera, radiusMm, ...fromPx);
    const to = cylinderPointAtPixel(camera, radiusMm, ...toPx);
    if (!from || !to) return PASSED_BY;
    const miss = (to.bearingDeg - from.bearingDeg - turnDeg) / sdDeg;
    return Math.max(-PASSED_BY, Math.min(PASSED_BY, miss));
  });
}
