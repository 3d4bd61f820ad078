/** How a wheel is turned, as a hand is told of it. */
export type TurnSpeed = 'still' | 'slow' | 'good' | 'fast';

/** Below this the wheel stands; a resting wheel's own rocking shows as less than a degree a second. */
export const STILL_BELOW_DEG_PER_S = 1;
/** A turn would take a minute and a half: it works, but wears out the arm and the film grows long. */
export const SLOW_BELOW_DEG_PER_S = 4;
/**
 * A turn in eighteen seconds. "About half a minute" is 12°/s; beyond 20°/s the tread moves more
 * than half its pitch (some 5°) in a tenth of a second and the wheel begins to lag its own lean.
 */
export const FAST_ABOVE_DEG_PER_S = 20;
/**
 * From picture to picture the tread may move by less than half its pitch, or one block is taken for
 * the next, degrees. A camera that gives few pictures wants a slower hand.
 */
export const FASTEST_STEP_DEG = 2.2;

/** `pictureStepS`: time between pictures, s; left out where no picture has to follow. */
export function turnSpeedOf(turningDegPerS: number, pictureStepS = 0): TurnSpeed {
  const speed = Math.abs(turningDegPerS);
  if (speed > FAST_ABOVE_DEG_PER_S || speed * pictureStepS > FASTEST_STEP_DEG) return 'fast';
  if (speed >= SLOW_BELOW_DEG_PER_S) return 'good';
  return speed >= STILL_BELOW_DEG_PER_S ? 'slow' : 'still';
}
