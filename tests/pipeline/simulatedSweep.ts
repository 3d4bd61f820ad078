import type { SweepObservations } from '../../src/contract/observations.ts';
import { gaussianFrom, seededRandom } from './seededRandom.ts';
import { armMotion, type ArmConditions, type ArmMotion } from './armMotion.ts';

/**
 * A sweep's heights by small steps of time, written without the fit's own matrices: the equation
 * of motion is integrated directly (2 ms, semi-implicit Euler), driven by white force and by
 * single kicks. Everything is drawn from one seed.
 */
export interface SimulatedSweep {
  readonly observations: SweepObservations;
  readonly tiltMm: readonly [number, number];
  readonly standMm: readonly [number, number];
  readonly offsetMm: number;
  readonly waves: readonly (readonly [number, number])[];
  readonly frequencyHz: number;
  /** Tilt of each frame beyond stand and still wheel, mm: (0°, 90°) pairs. */
  readonly rockingMm: Float64Array;
  readonly rockingRmsMm: number;
  readonly description: string;
}

export interface SimulatedConditions extends ArmConditions {
  readonly style: 'steady' | 'uneven' | 'stop-and-go';
  readonly sense: 1 | -1;
  readonly turnedDeg: number;
  readonly durationS: number;
  readonly frameRateHz: number;
  readonly periodS: number;
  /** Moment of inertia about the axle over that about a diameter. */
  readonly spinRatio: number;
  readonly dampingRatio: number;
  /** Height of one kick's swing, mm, and kicks a second. */
  readonly kickMm: number;
  readonly kicksPerS: number;
  /** White force, as the swing it excites in one radian, mm. */
  readonly forceMm: number;
  /** Slow change: standard deviation mm, correlation time s. */
  readonly slowMm: number;
  readonly slowTimeS: number;
  /** What changes slowly: the lean the wheel is drawn to, or only the picture's idea of its tilt. */
  readonly slowActsOn: 'wheel' | 'picture';
  readonly riseMm: number;
  readonly standMm: number;
  readonly noiseMm: number;
  readonly offsetNoiseMm: number;
  /** Share of the noise's variance that runs along azimuth over about 10°. */
  readonly runningShare: number;
  readonly biasMm: number;
  readonly missingShare: number;
  readonly gaps: number;
  /** A weight comes off: from this share of the time on the wheel's own tilt is another one by so much, mm. */
  readonly changed?: { readonly atShare: number; readonly byMm: readonly [number, number] };
}

const STEP_S = 0.002;

export function drawConditions(seed: number): SimulatedConditions {
  const random = seededRandom(seed + 77777);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const logBetween = (low: number, high: number): number => low * (high / low) ** random();
  const arm = seededRandom(seed + 55_555);
  const lively = arm() < 0.5;
  const armSway = (): number => (lively ? 0.03 * (1 / 0.03) ** arm() : 0);
  const styles = ['steady', 'uneven', 'uneven', 'stop-and-go'] as const;
  const style = styles[Math.floor(random() * 4)];
  return {
    style,
    sense: random() < 0.5 ? 1 : -1,
    turnedDeg: between(372, 420),
    durationS: style === 'stop-and-go' ? between(50, 80) : between(24, 40),
    frameRateHz: [24, 30, 30, 60][Math.floor(random() * 4)],
    periodS: between(3, 7),
    // Even, with the standard deviation 0.1 that the fit assumes.
    spinRatio: between(1.53, 1.87),
    dampingRatio: logBetween(0.006, 0.05),
    kickMm: random() < 0.15 ? 0 : logBetween(0.1, 1.2),
    kicksPerS: between(0.15, 0.8),
    forceMm: logBetween(0.02, 0.3),
    slowMm: logBetween(0.01, 0.15),
    slowTimeS: between(2, 8),
    slowActsOn: random() < 0.6 ? 'wheel' : 'picture',
    riseMm: random() < 0.1 ? 0 : between(0, 12),
    standMm: between(0, 5),
    noiseMm: between(0.1, 0.5),
    offsetNoiseMm: between(0, 0.08),
    runningShare: between(0, 0.7),
    biasMm: between(0, 0.15),
    missingShare: between(0, 0.25),
    gaps: Math.floor(random() * 3),
    swayDownMm: armSway(),
    swayRightMm: armSway(),
    swayPeriodS: 0.4 + 1.8 * arm(),
  };
}

export function simulateSweep(seed: number, conditions: SimulatedConditions): SimulatedSweep {
  const random = seededRandom(seed);
  const gaussian = gaussianFrom(random);
  const c = conditions;
  const rise = c.riseMm;
  const riseAngle = 2 * Math.PI * random();
  const tiltMm = [rise * Math.cos(riseAngle), rise * Math.sin(riseAngle)] as const;
  const standAngle = 2 * Math.PI * random();
  const standMm = [c.standMm * Math.cos(standAngle), c.standMm * Math.sin(standAngle)] as const;
  const turnRate = turnProfile(c, random);
  const timeS = frameTimes(c, random, gaussian);
  const motion = integrate(c, tiltMm, standMm, turnRate, timeS, -random() * 6, random, gaussian);
  const offsetMm = 2 * gaussian() - 5;
  const waves = [0.25, 0.15, 0.08].map((size) => [size * gaussian(), size * gaussian()] as const);
  const azimuthsDeg = Float64Array.from({ length: 21 }, (_, a) => -50 + 5 * a);
  const sway = armMotion(c, timeS, gaussianFrom(seededRandom(seed + 66_666)));
  const heights = seeHeights(c, motion, sway, azimuthsDeg, offsetMm, waves, random, gaussian);
  const rockingMm = new Float64Array(2 * timeS.length);
  let squares = 0;
  timeS.forEach((_, f) => {
    const [cf, sf] = [Math.cos(motion.turn[f]), Math.sin(motion.turn[f])];
    rockingMm[2 * f] = motion.tilt[2 * f] - standMm[0] - tiltMm[0] * cf + tiltMm[1] * sf;
    rockingMm[2 * f + 1] = motion.tilt[2 * f + 1] - standMm[1] - tiltMm[0] * sf - tiltMm[1] * cf;
    squares += (rockingMm[2 * f] ** 2 + rockingMm[2 * f + 1] ** 2) / 2;
  });
  return {
    observations: {
      azimuthsDeg,
      timeS,
      // The picture's turn is good to a few hundredths of a degree.
      turnDeg: motion.turn.map((t) => (t * 180) / Math.PI + 0.03 * gaussian()),
      heightMm: heights.heightMm,
      standardErrorMm: heights.standardErrorMm,
      edgeRadiusMm: 305,
      azimuthBiasSdMm: c.biasMm,
    },
    tiltMm,
    standMm,
    offsetMm,
    waves,
    frequencyHz: 1 / c.periodS,
    rockingMm,
    rockingRmsMm: Math.sqrt(squares / timeS.length),
    description: JSON.stringify({ seed, ...c }),
  };
}

/** Turning rate over time, rad/s. */
function turnProfile(c: SimulatedConditions, random: () => number): (tS: number) => number {
  const total = (c.sense * c.turnedDeg * Math.PI) / 180;
  const restS = 1.5;
  if (c.style === 'stop-and-go') {
    const steps = 9;
    const period = (c.durationS - restS) / steps;
    const moveS = 1.5 + random();
    return (t) => {
      const within = (t - restS) % period;
      if (t < restS || within > moveS) return 0;
      return (total / steps / moveS) * (1 - Math.cos((2 * Math.PI * within) / moveS));
    };
  }
  const depth = c.style === 'uneven' ? 0.6 : 0.1;
  const push = 2 * Math.PI * (0.25 + 0.3 * random());
  const phase = 2 * Math.PI * random();
  const moving = c.durationS - 2 * restS;
  return (t) => {
    if (t < restS || t > c.durationS - restS) return 0;
    const ramp = Math.min(1, (t - restS) / 1.5, (c.durationS - restS - t) / 1.5);
    return (total / (moving - 1.5)) * ramp * (1 + depth * Math.sin(push * t + phase));
  };
}

/** Uneven steps, some frames dropped, a few longer gaps. */
function frameTimes(
  c: SimulatedConditions,
  random: () => number,
  gaussian: () => number,
): Float64Array {
  const gaps = Array.from({ length: c.gaps }, () => ({
    from: c.durationS * random(),
    for: 0.3 + 1.2 * random(),
  }));
  const times: number[] = [];
  const step = 1 / c.frameRateHz;
  for (let t = 0; t < c.durationS; t += step * (1 + 0.15 * Math.max(-3, Math.min(3, gaussian())))) {
    if (random() < 0.02) continue;
    if (gaps.some((gap) => t > gap.from && t < gap.from + gap.for)) continue;
    times.push(t);
  }
  return Float64Array.from(times);
}

interface Motion {
  readonly tilt: Float64Array;
  readonly turn: Float64Array;
}

/** z̈ = −2ζω₀ż + i·s·Ω·ż − ω₀²·(z − stand − W·e^{iφ} − slow) + force, axis by axis. */
function integrate(
  c: SimulatedConditions,
  tiltMm: readonly [number, number],
  standMm: readonly [number, number],
  turnRate: (tS: number) => number,
  timeS: Float64Array,
  startTurn: number,
  random: () => number,
  gaussian: () => number,
): Motion {
  const rate = (2 * Math.PI) / c.periodS;
  const out: Motion = {
    tilt: new Float64Array(2 * timeS.length),
    turn: new Float64Array(timeS.length),
  };
  const { atShare, byMm } = c.changed ?? { atShare: Infinity, byMm: [0, 0] };
  const changesAtS = atShare * c.durationS;
  const changedMm = [tiltMm[0] + byMm[0], tiltMm[1] + byMm[1]];
  let turn = startTurn;
  const swing = c.kickMm;
  let [slowX, slowY] = [c.slowMm * gaussian(), c.slowMm * gaussian()];
  let x = standMm[0] + tiltMm[0] * Math.cos(turn) - tiltMm[1] * Math.sin(turn) + swing * gaussian();
  let y = standMm[1] + tiltMm[0] * Math.sin(turn) + tiltMm[1] * Math.cos(turn) + swing * gaussian();
  let [vx, vy] = [rate * swing * gaussian(), rate * swing * gaussian()];
  const forceStep = c.forceMm * Math.sqrt(rate ** 3 * STEP_S);
  const slowKeep = Math.exp(-STEP_S / c.slowTimeS);
  const slowStep = c.slowMm * Math.sqrt(1 - slowKeep ** 2);
  let f = 0;
  for (let t = 0; f < timeS.length; t += STEP_S) {
    while (f < timeS.length && timeS[f] <= t) {
      const seen = c.slowActsOn === 'picture' ? 1 : 0;
      out.tilt[2 * f] = x + seen * slowX;
      out.tilt[2 * f + 1] = y + seen * slowY;
      out.turn[f] = turn;
      f++;
    }
    const omega = turnRate(t);
    const [ct, st] = [Math.cos(turn), Math.sin(turn)];
    const drawn = c.slowActsOn === 'wheel' ? 1 : 0;
    const [a, b] = t < changesAtS ? tiltMm : changedMm;
    const restX = standMm[0] + a * ct - b * st + drawn * slowX;
    const restY = standMm[1] + a * st + b * ct + drawn * slowY;
    const gyro = c.spinRatio * omega;
    const ax = -2 * c.dampingRatio * rate * vx - gyro * vy - rate * rate * (x - restX);
    const ay = -2 * c.dampingRatio * rate * vy + gyro * vx - rate * rate * (y - restY);
    vx += ax * STEP_S + forceStep * gaussian();
    vy += ay * STEP_S + forceStep * gaussian();
    if (random() < c.kicksPerS * STEP_S) {
      vx += rate * c.kickMm * gaussian();
      vy += rate * c.kickMm * gaussian();
    }
    x += vx * STEP_S;
    y += vy * STEP_S;
    turn += omega * STEP_S;
    slowX = slowX * slowKeep + slowStep * gaussian();
    slowY = slowY * slowKeep + slowStep * gaussian();
  }
  return out;
}

function seeHeights(
  c: SimulatedConditions,
  motion: Motion,
  sway: ArmMotion,
  azimuthsDeg: Float64Array,
  offsetMm: number,
  waves: readonly (readonly [number, number])[],
  random: () => number,
  gaussian: () => number,
) {
  const azimuths = azimuthsDeg.length;
  const frames = motion.turn.length;
  const heightMm = new Float32Array(frames * azimuths);
  const standardErrorMm = new Float32Array(frames * azimuths);
  const bias = Array.from({ length: azimuths }, () => c.biasMm * gaussian());
  // The standard error handed over is off by a factor, as a real one would be.
  const claimed = c.noiseMm * (0.6 + 0.8 * random());
  for (let f = 0; f < frames; f++) {
    const common = c.offsetNoiseMm * gaussian();
    let running = gaussian();
    for (let a = 0; a < azimuths; a++) {
      const alpha = (azimuthsDeg[a] * Math.PI) / 180;
      const beta = alpha - motion.turn[f];
      let y = offsetMm + common + bias[a];
      // A way to the right lifts one flank of the arc and lowers the other, by the arc's own slope.
      y += sway.downMm[f] + sway.rightMm[f] * Math.tan(alpha);
      y += motion.tilt[2 * f] * Math.cos(alpha) + motion.tilt[2 * f + 1] * Math.sin(alpha);
      waves.forEach(([cosMm, sinMm], k) => {
        y += cosMm * Math.cos((k + 2) * beta) + sinMm * Math.sin((k + 2) * beta);
      });
      running = 0.6 * running + 0.8 * gaussian();
      y +=
        c.noiseMm *
        (Math.sqrt(1 - c.runningShare) * gaussian() + Math.sqrt(c.runningShare) * running);
      const at = f * azimuths + a;
      heightMm[at] = random() < c.missingShare ? NaN : y;
      standardErrorMm[at] = claimed;
    }
  }
  return { heightMm, standardErrorMm };
}
