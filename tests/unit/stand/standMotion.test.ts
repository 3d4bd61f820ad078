import { describe, expect, it } from 'vitest';

import { HAND_OFF, standMotion } from '../../../samples/stand/motion/standMotion.ts';
import { wheelOnBall } from '../../../samples/stand/motion/wheelOnBall.ts';
import { standScene } from '../../../samples/stand/scene/readScene.ts';

const still = { startSwingMm: 0, handSwingMm: 0, slopeMrad: 0 };
const STEP_S = 0.02;

/** Leans of a wheel that a hand turns evenly, after the start has died away. */
function turned(degPerS: number, dampingRatio: number) {
  const scene = standScene({
    wheel: { unbalance: { amountGmm: 3700, heavySpotDeg: 30 } },
    stand: { ...still, dampingRatio },
  });
  const motion = standMotion(scene, 0);
  const [toward, across] = [[] as number[], [] as number[]];
  for (let t = 0; t < 60; t += STEP_S) {
    const leads = { turnDeg: degPerS * t, rateDegPerS: degPerS };
    const { leanMrad, turnDeg } = motion.advance(STEP_S, { ...HAND_OFF, leads });
    if (t < 30) continue;
    // Seen from the wheel the lean stands still.
    const phi = (turnDeg * Math.PI) / 180;
    toward.push(leanMrad[0] * Math.cos(phi) + leanMrad[1] * Math.sin(phi));
    across.push(leanMrad[1] * Math.cos(phi) - leanMrad[0] * Math.sin(phi));
  }
  const mean = (v: readonly number[]) => v.reduce((sum, x) => sum + x, 0) / v.length;
  return { scene, lean: [mean(toward), mean(across)] as const };
}

describe('a wheel that is turned', () => {
  it.each([-45, -20, 20, 45])(
    'leans less, and lags, at %d°/s as gyroscopic theory says',
    (rate) => {
      const zeta = 0.06;
      const { scene, lean } = turned(rate, zeta);
      const { body, contactKgMm2, rockingRadPerS } = wheelOnBall(scene);
      const atRest = 1000 * Math.atan(3700 / (16_500 * scene.stand.pendulumDepthMm));
      const share = (rate * Math.PI) / 180 / rockingRadPerS;
      // W/(1 + (s − 1)(Ω/ω₀)² + 2iζΩ/ω₀), s over the inertia about the contact.
      const spin = body.spinKgMm2 / contactKgMm2;
      const real = 1 + (spin - 1) * share ** 2;
      const imaginary = 2 * zeta * share;
      const size = atRest / Math.hypot(real, imaginary);
      const atDeg = 210 - (Math.atan2(imaginary, real) * 180) / Math.PI;
      expect(Math.hypot(...lean) / size).toBeCloseTo(1, 2);
      const foundDeg = (Math.atan2(lean[1], lean[0]) * 180) / Math.PI;
      expect((((foundDeg - atDeg) % 360) + 540) % 360).toBeCloseTo(180, 0);
    },
  );

  it('creeps along when it is turned on a lean that stays in the room', () => {
    const scene = standScene({
      wheel: { unbalance: { amountGmm: 0 } },
      stand: { ...still, slopeMrad: 3, downhillAzimuthDeg: 0 },
    });
    const motion = standMotion(scene, 0);
    const before = motion.pose().ballMm;
    for (let t = 0; t < 36; t += STEP_S) {
      motion.advance(STEP_S, { ...HAND_OFF, leads: { turnDeg: 10 * t, rateDegPerS: 10 } });
    }
    const after = motion.pose().ballMm;
    const leanRad = (31.75 / 8.2) * 0.003;
    // Once round: 2π·R·lean, less R·slope·2π since the plate slopes, too.
    const wanted = 2 * Math.PI * 31.75 * (leanRad - 0.003);
    const way = Math.hypot(after[0] - before[0], after[1] - before[1]);
    expect(Math.abs(way / wanted - 1)).toBeLessThan(0.15);
  });
});

describe('the hand', () => {
  const scene = standScene({ stand: still });

  it('turns the wheel where it is led and no farther', () => {
    const motion = standMotion(scene, -35);
    for (let t = 0; t < 3; t += STEP_S) {
      motion.advance(STEP_S, { ...HAND_OFF, leads: { turnDeg: 10, rateDegPerS: 0 } });
    }
    expect(motion.pose().turnDeg).toBeCloseTo(10, 1);
  });

  it('gives a flick that dies away', () => {
    const motion = standMotion(scene, 0);
    motion.flick(30);
    motion.advance(1, HAND_OFF);
    const afterOne = motion.pose().turnDeg;
    expect(afterOne).toBeGreaterThan(25);
    const first = motion.advance(60, HAND_OFF).turnDeg;
    expect(motion.advance(10, HAND_OFF).turnDeg - first).toBeLessThan(5);
  });

  it('presses the rim down at the sight', () => {
    const motion = standMotion(scene, 0);
    const before = motion.pose().leanMrad[0];
    const presses = { forceN: 0.1, azimuthDeg: 0 };
    motion.advance(12, { ...HAND_OFF, holds: true, presses });
    const { restoring } = wheelOnBall(scene);
    const wanted = (1e6 * 0.1 * scene.wheel.edgeRadiusMm) / restoring;
    // The near side goes down: the high side is away from the sight.
    expect(motion.pose().leanMrad[0] - before).toBeCloseTo(-wanted, 0);
  });

  it('sees weights that were stuck on, as long as they are', () => {
    // Centroid of an arc of 52 mm: 20 g of strip at 185 mm.
    const unbalance = { amountGmm: (3700 * Math.sin(26 / 185)) / (26 / 185), heavySpotDeg: 80 };
    const motion = standMotion(standScene({ wheel: { unbalance }, stand: still }), 0);
    expect(Math.hypot(...motion.pose().leanMrad)).toBeGreaterThan(20);
    motion.change(
      standScene({
        wheel: {
          unbalance,
          weights: [{ massG: 20, radiusMm: 185, angleDeg: 260 }],
        },
        stand: still,
      }),
    );
    motion.advance(20, { ...HAND_OFF, holds: true });
    expect(Math.hypot(...motion.pose().leanMrad)).toBeLessThan(0.05);
  });
});
