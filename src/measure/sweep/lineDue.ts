import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { isExpected } from './lineSamples.ts';
import type { SolvedCamera } from './solvedCamera.ts';
import type { SweepRecording } from './sweepRecording.ts';

/**
 * In how many of the views in which the edge stands clearly below the sheet the line was seen: on the rib's
 * face nothing can hide it there, so nearly all. Blocks that never show it lie beyond the outline and have
 * no say.
 *
 * @returns share from 0 to 1; null with fewer than {@link LEAST_DUE} such views, which tell nothing
 */
export function shareSeenWhereDue(
  { frames }: SweepRecording,
  { observations, line }: Pick<SolvedCamera, 'observations' | 'line'>,
): number | null {
  const { azimuthsDeg, leans, offsetMm, edgeRadiusMm, frameIndex, unevenMm } = observations;
  const blocks = azimuthsDeg.length;
  const isShown = Array.from(azimuthsDeg, (_, b) =>
    leans.some((__, i) => !Number.isNaN(line.awayPx[i * blocks + b])),
  );
  let [due, seen] = [0, 0];
  leans.forEach(({ toward, across }, i) => {
    const { lineOffsetPx } = frames[frameIndex[i]];
    azimuthsDeg.forEach((azimuthDeg, b) => {
      const a = azimuthDeg * RAD_PER_DEG;
      const gapMm = offsetMm + edgeRadiusMm * (toward * Math.cos(a) + across * Math.sin(a));
      if (!isShown[b] || !isExpected(gapMm, unevenMm)) return;
      due++;
      if (!Number.isNaN(lineOffsetPx[b])) seen++;
    });
  });
  return due < LEAST_DUE ? null : seen / due;
}

/** Some seven blocks in some fifteen pictures: a slot or a hand makes up fewer. */
const LEAST_DUE = 100;
