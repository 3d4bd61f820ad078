/** The tablet's arm going to and fro: rms of the rows down and to the right as heights, mm; its period, s. */
export interface ArmConditions {
  readonly swayDownMm: number;
  readonly swayRightMm: number;
  readonly swayPeriodS: number;
}

/** Steps of time, s. */
const STEP_S = 0.002;

export interface ArmMotion {
  readonly downMm: Float64Array;
  readonly rightMm: Float64Array;
}

/** A tablet's arm swings on after every touch: damped a few per cent, driven at random. */
const ARM_DAMPING = 0.05;

export function armMotion(
  c: ArmConditions,
  timeS: Float64Array,
  gaussian: () => number,
): ArmMotion {
  const axis = (rmsMm: number): Float64Array => {
    const rate = (2 * Math.PI) / c.swayPeriodS;
    // Random force that keeps the swing's variance at rms².
    const force = rmsMm * Math.sqrt(4 * ARM_DAMPING * rate ** 3 * STEP_S);
    let [x, v] = [rmsMm * gaussian(), rmsMm * rate * gaussian()];
    let t = 0;
    return timeS.map((at) => {
      for (; t < at; t += STEP_S) {
        v += (-2 * ARM_DAMPING * rate * v - rate * rate * x) * STEP_S + force * gaussian();
        x += v * STEP_S;
      }
      return x;
    });
  };
  return { downMm: axis(c.swayDownMm), rightMm: axis(c.swayRightMm) };
}
