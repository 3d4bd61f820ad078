import { cross, dot, type Vec3 } from '../../drawnWheel/drawnCamera.ts';

/**
 * Wheel and ball as one rigid body that rolls on a plate without slipping: no small angles, so that
 * lean, amplified slope, rocking, creep and what turning takes off the lean all follow from one law.
 *
 * Room frame: right-handed, x to the sight, y to the right in the picture, z up; a direction at
 * azimuth α (clockwise from above) is (cos α, −sin α). Millimetres, kilograms, seconds; torques in
 * kg·mm²/s².
 */
export interface RollingBody {
  readonly massKg: number;
  readonly ballRadiusMm: number;
  /** Centre of mass from the ball's centre, in the wheel's own frame. */
  readonly centreMm: Vec3;
  /** Moments of inertia about the centre of mass: across the axle and about it, kg·mm². */
  readonly acrossKgMm2: number;
  readonly spinKgMm2: number;
  /** Outward normal of the plate. */
  readonly plateNormal: Vec3;
}

/** Turn from wheel to room as a unit quaternion (w, x, y, z), its rate and the ball's way. */
export interface RollingState {
  readonly turn: readonly [number, number, number, number];
  /** Angular velocity, room frame, rad/s. */
  readonly rate: Vec3;
  /** Way of the ball's centre since the start, mm. */
  readonly ballMm: Vec3;
}

/** Torque about the point of contact in a state: the hand's and what damps. */
export type ContactTorque = (state: RollingState) => Vec3;

/** 9.80665 m/s² (ISO 80000-3), in mm/s². */
export const GRAVITY_MM_S2 = 9806.65;

/** A vector of the wheel's frame, seen in the room. */
export function intoRoom(q: RollingState['turn'], v: Vec3): Vec3 {
  const [w, x, y, z] = q;
  const u: Vec3 = [x, y, z];
  const t = cross(u, v);
  const tt = cross(u, t);
  return [v[0] + 2 * (w * t[0] + tt[0]), v[1] + 2 * (w * t[1] + tt[1]), v[2] + 2 * (w * t[2] + tt[2])];
}

/** One step by the classical Runge–Kutta rule of fourth order. */
export function rolledOn(
  body: RollingBody,
  state: RollingState,
  torque: ContactTorque,
  stepS: number,
): RollingState {
  const k1 = slopeAt(body, state, torque);
  const k2 = slopeAt(body, moved(state, k1, stepS / 2), torque);
  const k3 = slopeAt(body, moved(state, k2, stepS / 2), torque);
  const k4 = slopeAt(body, moved(state, k3, stepS), torque);
  const mean = k1.map((a, i) => (a + 2 * k2[i] + 2 * k3[i] + k4[i]) / 6);
  return moved(state, mean, stepS);
}

/** Rates of the ten numbers of a state: turn, angular velocity, way. */
function slopeAt(body: RollingBody, state: RollingState, torque: ContactTorque): number[] {
  const [w, x, y, z] = state.turn;
  const [a, b, c] = state.rate;
  const roll = cross(state.rate, scaled(body.plateNormal, body.ballRadiusMm));
  return [
    -0.5 * (a * x + b * y + c * z),
    0.5 * (a * w + b * z - c * y),
    0.5 * (b * w + c * x - a * z),
    0.5 * (c * w + a * y - b * x),
    ...angularAcceleration(body, state, torque(state)),
    ...roll,
  ];
}

/**
 * Moments about the contact C, with p = R·n + ρ from C to the centre of mass and v = ω × p:
 *
 *   (I + M(p²·1 − p pᵀ))·ω̇ = τ + p × M g − ω × Iω − M p × (ω × (ω × ρ))
 *
 * Source: Newton and Euler for a body whose contact does not slip (any mechanics textbook).
 */
function angularAcceleration(body: RollingBody, state: RollingState, torque: Vec3): Vec3 {
  const { massKg: m, acrossKgMm2: i1, spinKgMm2: i3 } = body;
  const axis = intoRoom(state.turn, [0, 0, 1]);
  const rho = intoRoom(state.turn, body.centreMm);
  const p = sum(scaled(body.plateNormal, body.ballRadiusMm), rho);
  const omega = state.rate;
  const spin = dot(axis, omega);
  const momentum = sum(scaled(omega, i1), scaled(axis, (i3 - i1) * spin));
  const swing = cross(p, cross(omega, cross(omega, rho)));
  const gyro = cross(omega, momentum);
  const weight = cross(p, [0, 0, -m * GRAVITY_MM_S2]);
  const right: Vec3 = [0, 1, 2].map((k) => torque[k] + weight[k] - gyro[k] - m * swing[k]) as never;
  const pp = dot(p, p);
  const row = (r: number): number[] =>
    [0, 1, 2].map(
      (c) => (r === c ? i1 + m * pp : 0) + (i3 - i1) * axis[r] * axis[c] - m * p[r] * p[c],
    );
  return solved(row(0), row(1), row(2), right);
}

/** Three linear equations by Cramer's rule; the matrix is an inertia and so never singular. */
function solved(r0: number[], r1: number[], r2: number[], right: Vec3): Vec3 {
  const column = (k: number): Vec3 => [r0[k], r1[k], r2[k]];
  const [a, b, c] = [column(0), column(1), column(2)];
  const whole = dot(a, cross(b, c));
  return [
    dot(right, cross(b, c)) / whole,
    dot(a, cross(right, c)) / whole,
    dot(a, cross(b, right)) / whole,
  ];
}

function moved(state: RollingState, slope: readonly number[], stepS: number): RollingState {
  const q = state.turn.map((v, i) => v + stepS * slope[i]);
  const length = Math.hypot(...q);
  return {
    turn: q.map((v) => v / length) as never,
    rate: state.rate.map((v, i) => v + stepS * slope[4 + i]) as never,
    ballMm: state.ballMm.map((v, i) => v + stepS * slope[7 + i]) as never,
  };
}

function scaled(a: Vec3, by: number): Vec3 {
  return [a[0] * by, a[1] * by, a[2] * by];
}

function sum(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}
