import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { PlaneVector } from '../../quantities/vector.ts';

/**
 * Stand and wheel of an unfinished sweep, kept up picture by picture at the cost of a few sums: for
 * telling how good the reading would be by now, never for the reading itself.
 *
 * Model, as complex numbers along azimuth 0 and 90: z = S + W·e^{iφ} + rest; z tilt of the edge in
 * mm, S stand, W wheel, φ turn. Each picture counts by the time since the one before it, so that
 * uneven pictures weigh alike.
 */
export interface RunningTilt {
  /** Σ dt, Σ dt·e^{iφ}, Σ dt·z, Σ dt·z·e^{−iφ}, Σ dt·|z|². */
  sumS: number;
  turn: [number, number];
  tilt: [number, number];
  carried: [number, number];
  squares: number;
  lastS: number;
  /** Mean square of the rest over the last few seconds, mm²; null until there was a solution. */
  recentSquares: number | null;
}

export interface RunningTiltNow {
  /** W as fitted, mm; counted from the turn's own zero. */
  readonly tiltMm: PlaneVector;
  /** Standard deviation of each of its components, mm. */
  readonly tiltSdMm: number;
  /** Amplitude of what swings or drifts now beside stand and wheel, mm at the edge. */
  readonly rockingMm: number;
}

/**
 * Rocking of 3 to 8 s a period: values a quarter of the usual period apart are about independent.
 */
const INDEPENDENT_S = 1.2;
/** Time over which "now" is told of the rocking, s: about one swing. */
const RECENT_S = 5;
/** A longer gap between pictures counts as no more than this, s. */
const LONGEST_STEP_S = 0.5;
/** Least part of |1 − mean e^{iφ}|² for stand and wheel to be apart: reached after about 100°. */
const LEAST_APART = 0.25;
/** Fewer independent values leave no scatter to judge by. */
const LEAST_INDEPENDENT = 6;

export function createRunningTilt(): RunningTilt {
  return {
    sumS: 0,
    turn: [0, 0],
    tilt: [0, 0],
    carried: [0, 0],
    squares: 0,
    lastS: NaN,
    recentSquares: null,
  };
}

/** @param tiltMm tilt of the edge toward azimuth 0 and 90, mm; a constant in it goes to the stand. */
export function addToRunningTilt(
  running: RunningTilt,
  timeS: number,
  turnDeg: number,
  tiltMm: PlaneVector,
): void {
  const sinceS = timeS - running.lastS;
  running.lastS = timeS;
  if (!(sinceS > 0)) return;
  const dt = Math.min(sinceS, LONGEST_STEP_S);
  const { along0: x, along90: y } = tiltMm;
  const [c, s] = [Math.cos(turnDeg * RAD_PER_DEG), Math.sin(turnDeg * RAD_PER_DEG)];
  running.sumS += dt;
  running.turn[0] += dt * c;
  running.turn[1] += dt * s;
  running.tilt[0] += dt * x;
  running.tilt[1] += dt * y;
  running.carried[0] += dt * (x * c + y * s);
  running.carried[1] += dt * (y * c - x * s);
  running.squares += dt * (x * x + y * y);
  const solved = solve(running);
  if (!solved) return;
  const restX = x - solved.standX - (solved.wheelX * c - solved.wheelY * s);
  const restY = y - solved.standY - (solved.wheelX * s + solved.wheelY * c);
  const square = (restX * restX + restY * restY) / 2;
  const before = running.recentSquares ?? square;
  running.recentSquares = before + (square - before) * (1 - Math.exp(-dt / RECENT_S));
}

/** Null until enough of the turn is seen to part stand and wheel. */
export function runningTiltNow(running: RunningTilt): RunningTiltNow | null {
  const solved = solve(running);
  if (!solved || running.recentSquares === null) return null;
  const independent = running.sumS / INDEPENDENT_S;
  if (independent < LEAST_INDEPENDENT) return null;
  // Two axes a value, four unknowns.
  const perAxis = (solved.restSquares / running.sumS) * (independent / (2 * independent - 4));
  return {
    tiltMm: { along0: solved.wheelX, along90: solved.wheelY },
    tiltSdMm: Math.sqrt(perAxis / (independent * solved.apart)),
    rockingMm: Math.sqrt(2 * running.recentSquares),
  };
}

function solve({ sumS, turn, tilt, carried, squares }: RunningTilt) {
  const [ex, ey] = [turn[0] / sumS, turn[1] / sumS];
  const apart = 1 - ex * ex - ey * ey;
  if (!(apart > LEAST_APART)) return null;
  const [zx, zy] = [tilt[0] / sumS, tilt[1] / sumS];
  // W = (mean z·e^{−iφ} − mean z · conj(mean e^{iφ})) / (1 − |mean e^{iφ}|²)
  const wheelX = (carried[0] / sumS - (zx * ex + zy * ey)) / apart;
  const wheelY = (carried[1] / sumS - (zy * ex - zx * ey)) / apart;
  const restSquares =
    squares - sumS * (zx * zx + zy * zy) - sumS * apart * (wheelX * wheelX + wheelY * wheelY);
  return {
    wheelX,
    wheelY,
    standX: zx - (wheelX * ex - wheelY * ey),
    standY: zy - (wheelX * ey + wheelY * ex),
    restSquares: Math.max(0, restSquares),
    apart,
  };
}
