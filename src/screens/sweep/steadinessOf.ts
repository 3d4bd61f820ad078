export type Steadiness = 'steady' | 'little' | 'rocking';

/** A usual wheel's edge rises by about this for one gram: such rocking is lost in the turn, mm. */
const STEADY_BELOW_MM = 0.5;
/** Half of what a quarter ounce lifts the edge by: beyond, the turn has to average more away, mm. */
const LITTLE_BELOW_MM = 1.5;

/** @param rockingMm amplitude of rocking at the edge over the last seconds, mm */
export function steadinessOf(rockingMm: number): Steadiness {
  if (rockingMm < STEADY_BELOW_MM) return 'steady';
  return rockingMm < LITTLE_BELOW_MM ? 'little' : 'rocking';
}
