/**
 * A sweep's own time, which starts at its first picture and never jumps. Cameras count from when
 * the machine was started, and some set their clock anew after a sleep or a change of lens; the
 * measuring core must see neither.
 */
export interface SweepClock {
  /** Time of a picture in the sweep, s; null for one that was there before. */
  sweepTimeS(cameraS: number, arrivalS: number): number | null;
}

/** A clock that is wrong by less than this is not told from uneven pictures, s. */
const JUMP_S = 2;
/** Time must go on, however fast two pictures come in after a jump, s. */
const LEAST_STEP_S = 0.001;

/**
 * A busy machine delays a picture, and drops some, but none arrives before it was taken: a camera
 * that gets ahead of the arrivals further than ever before, or that goes back, has set its clock.
 * Then the step between the arrivals takes the place of its own.
 */
export function createSweepClock(): SweepClock {
  let last: {
    readonly cameraS: number;
    readonly arrivalS: number;
    readonly sweepS: number;
  } | null = null;
  let mostAheadS = -Infinity;
  return {
    sweepTimeS(cameraS, arrivalS) {
      const aheadS = cameraS - arrivalS;
      if (last === null) {
        last = { cameraS, arrivalS, sweepS: 0 };
        mostAheadS = aheadS;
        return 0;
      }
      const cameraStepS = cameraS - last.cameraS;
      const jumped = cameraStepS < -JUMP_S || aheadS > mostAheadS + JUMP_S;
      const stepS = jumped ? Math.max(LEAST_STEP_S, arrivalS - last.arrivalS) : cameraStepS;
      if (stepS <= 0) return null;
      mostAheadS = jumped ? aheadS : Math.max(mostAheadS, aheadS);
      last = { cameraS, arrivalS, sweepS: last.sweepS + stepS };
      return last.sweepS;
    },
  };
}
