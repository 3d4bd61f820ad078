export type TurningSpeed = 'still' | 'slow' | 'good' | 'fast';

/** Below this the wheel stands; a resting wheel's own rocking shows as less than a degree a second. */
export const STILL_BELOW_DEG_PER_S = 1;
/** A turn would take a minute and a half: it works, but wears out the arm and the film grows long. */
export const SLOW_BELOW_DEG_PER_S = 4;
/**
 * A turn in eighteen seconds. "About half a minute" is 12°/s; beyond 20°/s the tread moves more
 * than half its pitch (some 5°) in a tenth of a second and the wheel begins to lag its own lean.
 */
export const FAST_ABOVE_DEG_PER_S = 20;

export function turningSpeedOf(turningDegPerS: number): TurningSpeed {
  const speed = Math.abs(turningDegPerS);
  if (speed > FAST_ABOVE_DEG_PER_S) return 'fast';
  if (speed >= SLOW_BELOW_DEG_PER_S) return 'good';
  return speed >= STILL_BELOW_DEG_PER_S ? 'slow' : 'still';
}
