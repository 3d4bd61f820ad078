import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { createTermFit } from '../fit/termFit.ts';
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
  const wave = createTermFit(3);
  let sightings = 0;
  recording.frames.forEach(({ turnIndex }, f) => {
    if (turnIndex === null) return;
    const turnDeg = recording.turn.turnDeg[turnIndex];
    for (let b = 0; b < blocks; b++) {
      const beside = band.besideMm[f * blocks + b];
      if (beside !== beside) continue;
      const wheel = (azimuthsDeg[b] - turnDeg) * RAD_PER_DEG;
      wave.add([1, Math.cos(wheel), Math.sin(wheel)], beside);
      sightings++;
    }
  });
  const solved = sightings >= MIN_SIGHTINGS ? wave.solve() : null;
  return solved && Math.hypot(solved[1], solved[2]);
}
