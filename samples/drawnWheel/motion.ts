import type { DrawnScene, TurnPoint } from './scene.ts';
import { normalFrom, seededRandom } from './seededRandom.ts';

/** Where the wheel is in one picture. */
export interface WheelState {
  readonly timeS: number;
  readonly turnDeg: number;
  /** Lean, radians, along azimuth 0 and azimuth 90, pointing at the high side. */
  readonly toward: number;
  readonly across: number;
  /** Way of the ball's centre along azimuth 0 and azimuth 90, mm. */
  readonly wayTowardMm: number;
  readonly wayAcrossMm: number;
}

const STEP_S = 0.002;
/** A hand takes so long to bring the wheel to speed and to stop it, s. */
const EASE_S = 1;

/** Turn in degrees at a time: each stretch with a ramp up, an even speed and a ramp down. */
export function turnAt(points: readonly TurnPoint[], timeS: number): number {
  let i = 1;
  while (i < points.length - 1 && points[i].timeS < timeS) i++;
  const [a, b] = [points[i - 1], points[i]];
  const spanS = b.timeS - a.timeS;
  const ease = Math.min(EASE_S, spanS / 3);
  const t = Math.max(0, Math.min(spanS, timeS - a.timeS));
  // Way of a trapezoid of speed whose full speed is 1/(span − ease).
  const ramp = (s: number): number => (s * s) / (2 * ease);
  let way: number;
  if (t < ease) way = ramp(t);
  else if (t < spanS - ease) way = t - ease / 2;
  else way = spanS - ease - ramp(spanS - t);
  return a.turnDeg + ((b.turnDeg - a.turnDeg) * way) / (spanS - ease);
}

/**
 * The wheel's motion by small steps: it is drawn to the lean of stand and unbalance together,
 * z̈ = −2ζω₀·ż + i·s·Ω·ż − ω₀²·(z − stand − W·e^{iφ}), with z = toward + i·across; its ball rolls
 * without slipping under it.
 */
export function wheelMotion(scene: DrawnScene): WheelState[] {
  const rate = (2 * Math.PI) / scene.rockingPeriodS;
  const lean = Math.atan(scene.unbalanceGmm / (scene.massKg * 1000 * scene.pendulumDepthMm));
  const light = ((scene.heavySpotDeg + 180) * Math.PI) / 180;
  const stand = (scene.standHighAzimuthDeg * Math.PI) / 180;
  const restAt = (turnRad: number): [number, number] => [
    (scene.standMrad / 1000) * Math.cos(stand) + lean * Math.cos(light + turnRad),
    (scene.standMrad / 1000) * Math.sin(stand) + lean * Math.sin(light + turnRad),
  ];
  const radiusMm = scene.ballDiameterMm / 2;
  const endS = scene.turnPoints[scene.turnPoints.length - 1].timeS;
  let turn = (turnAt(scene.turnPoints, 0) * Math.PI) / 180;
  let [x, y] = restAt(turn);
  x += scene.rockingMm / scene.edgeRadiusMm;
  let [vx, vy, wayX, wayY] = [0, 0, 0, 0];
  const states: WheelState[] = [];
  const random = seededRandom(scene.seed + 2000);
  const normal = normalFrom(random);
  const { perS, swingMm } = scene.knocks ?? { perS: 0, swingMm: 0 };
  const knock = (swingMm * rate) / scene.edgeRadiusMm;
  for (let step = 0, t = 0; t <= endS; step++, t = step * STEP_S) {
    if (t >= states.length / scene.frameRateHz - 1e-9) {
      const turnDeg = (turn * 180) / Math.PI;
      states.push({ timeS: t, turnDeg, toward: x, across: y, wayTowardMm: wayX, wayAcrossMm: wayY });
    }
    if (random() < perS * STEP_S) {
      vx += knock * normal();
      vy += knock * normal();
    }
    const next = (turnAt(scene.turnPoints, t + STEP_S) * Math.PI) / 180;
    const omega = (next - turn) / STEP_S;
    const [restX, restY] = restAt(turn);
    const gyro = scene.spinOverTransverseInertia * omega;
    const drag = 2 * scene.dampingRatio * rate;
    const ax = -drag * vx - gyro * vy - rate * rate * (x - restX);
    const ay = -drag * vy + gyro * vx - rate * rate * (y - restY);
    vx += ax * STEP_S;
    vy += ay * STEP_S;
    // Velocity of the centre = rotation × up·R: the tilting part rolls toward the low side, and
    // the spin about the leaning axis, whose top points to the low side, rolls a quarter ahead.
    wayX += radiusMm * (-vx - omega * y) * STEP_S;
    wayY += radiusMm * (-vy + omega * x) * STEP_S;
    x += vx * STEP_S;
    y += vy * STEP_S;
    turn = next;
  }
  return states;
}
