import type { StandScene } from '../scene/standScene.ts';
import { treadPattern } from './treadPattern.ts';

/** A piece of a gap between two rows of blocks, over one block's length. */
export interface BlockGap {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly topWayMm: number;
  readonly bottomWayMm: number;
  readonly depthMm: number;
}

/** The gaps of a tread of blocks, piece by piece round the wheel; none where it has ribs. */
export function blockGaps(scene: StandScene): BlockGap[] {
  const { blocks } = scene.tyre;
  if (!blocks) return [];
  const starts = treadPattern(scene).shoulderStartDeg;
  return blocks.gaps.flatMap(({ topMm, widthMm, depthMm }, row) =>
    Array.from(starts, (fromDeg, k) => {
      const toDeg = k + 1 < starts.length ? starts[k + 1] : starts[0] + 360;
      const topWayMm = topMm + ((k + row) % 2 === 0 ? 1 : -1) * blocks.stepMm;
      return { fromDeg, toDeg, topWayMm, bottomWayMm: topWayMm - widthMm, depthMm };
    }),
  );
}
