import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { solveSymmetric } from '../fit/smallMatrix.ts';
import type { FollowedBand } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';

const MIN_SIGHTINGS = 200;

/**
 * By how much a band is stuck on off square, as the tread beside it tells: amplitude of the once-round
 * wave of its rise beyond the tread's, mm. Null where the tread does not tell.
 */
export function bandOffSquareMm(recording: SweepRecording, band: FollowedBand): number | null {
  const { azimuthsDeg } = recording.view.layout;
  const blocks = azimuthsDeg.length;
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  let sightings = 0;
  recording.frames.forEach(({ turnIndex }, f) => {
    if (turnIndex === null) return;
    const turnDeg = recording.turn.turnDeg[turnIndex];
    for (let b = 0; b < blocks; b++) {
      const beside = band.besideMm[f * blocks + b];
      if (beside !== beside) continue;
      const wheel = (azimuthsDeg[b] - turnDeg) * RAD_PER_DEG;
      const terms = [1, Math.cos(wheel), Math.sin(wheel)];
      terms.forEach((t, j) => {
        right[j] += t * beside;
        terms.forEach((u, k) => (normal[3 * j + k] += t * u));
      });
      sightings++;
    }
  });
  const solved = sightings >= MIN_SIGHTINGS ? solveSymmetric(normal, right, 3) : null;
  return solved && Math.hypot(solved.solution[1], solved.solution[2]);
}
