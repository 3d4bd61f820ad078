import { describe, expect, it } from 'vitest';

import { readSetup, type SweepSetup } from '../../../../src/contract/setup.ts';
import { filmGraph } from '../../../tools/troubles/filmGraph.ts';
import { handPicture } from '../../../tools/troubles/handPicture.ts';
import { pixelAfter } from '../../../tools/troubles/pixelAfter.ts';
import type { FilmFacts, Trouble } from '../../../tools/troubles/trouble.ts';
import { toldTroubles, troubledPlan } from '../../../tools/troubles/troubledPlan.ts';
import { troubledSetup, troubledTruth } from '../../../tools/troubles/troubledSides.ts';

const LARGE: FilmFacts = {
  ...{ name: 'large', widthPx: 1280, heightPx: 720, durationS: 30, picturesPerS: 24 },
  laserColour: 'green',
};
const SMALL: FilmFacts = { ...LARGE, name: 'small', widthPx: 640, heightPx: 480 };
const SEEDS = Array.from({ length: 300 }, (_, i) => i + 1);
const planWith = (...troubles: Trouble[]) => ({ seed: 1, film: LARGE, troubles });

const SETUP: SweepSetup = {
  format: 'tiltsweep.setup/1',
  wheel: { massKg: 16, edgeRadiusMm: 309, weightRadiusMm: 185 },
  stand: { ballDiameterMm: 63.5, pendulumDepthMm: 8 },
  camera: { downTiltDeg: 32, horizontalFovDeg: 64 },
  sight: {
    edgePoint: { xPx: 700, yPx: 400, timeS: 0.4 },
    valveMark: { widthMm: 22, colour: 'white' },
  },
  weightStepG: 5,
  after: { sweep: 'before', added: [{ massG: 20, radiusMm: 185, angleDeg: 40 }] },
};
const TRUTH = {
  shouldRefuse: false,
  unbalance: { amountGmm: 5000, heavySpotDeg: 75, lightSpotDeg: 255 },
} as const;

describe('troubles by lot', () => {
  it('are the same for the same seed, and others for others', () => {
    expect(troubledPlan(7, [LARGE, SMALL])).toEqual(troubledPlan(7, [LARGE, SMALL]));
    const told = new Set(SEEDS.map((seed) => toldTroubles(troubledPlan(seed, [LARGE, SMALL]))));
    expect(told.size).toBe(SEEDS.length);
  });

  it('are two to four different ones, every kind turns up, on every film', () => {
    const plans = SEEDS.map((seed) => troubledPlan(seed, [LARGE, SMALL]));
    for (const { troubles } of plans) {
      const kinds = troubles.map(({ kind }) => kind);
      expect(new Set(kinds).size).toBe(kinds.length);
      expect(kinds.length).toBeGreaterThanOrEqual(2);
      expect(kinds.length).toBeLessThanOrEqual(4);
      expect(kinds.includes('dim') && kinds.includes('washed-out')).toBe(false);
    }
    expect(new Set(plans.flatMap((p) => p.troubles.map(({ kind }) => kind))).size).toBe(18);
    expect(new Set(plans.map((p) => p.film.name)).size).toBe(2);
    for (const plan of plans.filter((p) => p.film === SMALL))
      expect(plan.troubles.map(({ kind }) => kind)).not.toContain('half-size');
  });

  it('make one graph each: every label is made once and used once', () => {
    for (const seed of SEEDS) {
      const graph = filmGraph(troubledPlan(seed, [LARGE, SMALL]));
      const labels = graph.match(/\[[a-z]+\d*\]/g)!.filter((label) => label !== '[out]');
      for (const label of labels) expect(labels.filter((l) => l === label)).toHaveLength(2);
      expect(graph.endsWith('format=yuv420p[out]')).toBe(true);
      expect(graph).not.toContain('NaN');
    }
  });
});

describe('where a pixel goes', () => {
  const point = { xPx: 700, yPx: 400 };

  it('a mirror changes sides, half the size halves, and the middle stays', () => {
    expect(pixelAfter(planWith({ kind: 'mirrored' }), point)).toEqual({ xPx: 580, yPx: 400 });
    expect(pixelAfter(planWith({ kind: 'half-size' }), point)).toEqual({ xPx: 350, yPx: 200 });
    const all = planWith({ kind: 'roll', rollDeg: 5 }, { kind: 'lens', radial: 0.06 });
    const middle = pixelAfter(all, { xPx: 640, yPx: 360 });
    expect(middle.xPx).toBeCloseTo(640, 9);
    expect(middle.yPx).toBeCloseTo(360, 9);
  });

  it('a roll turns clockwise as seen: what lay to the right comes down', () => {
    const turned = pixelAfter(planWith({ kind: 'roll', rollDeg: 90 }), { xPx: 740, yPx: 360 });
    expect(turned.xPx).toBeCloseTo(640, 9);
    expect(turned.yPx).toBeCloseTo(460, 9);
  });

  it('a barrel draws in what lies outside, so that looked up again it is where it was', () => {
    const radial = 0.07;
    const { xPx, yPx } = pixelAfter(planWith({ kind: 'lens', radial }), { xPx: 1100, yPx: 600 });
    const [x, y] = [xPx - 640, yPx - 360];
    const stretch = 1 + (radial * (x * x + y * y)) / (640 ** 2 + 360 ** 2);
    expect(stretch * x).toBeCloseTo(460, 6);
    expect(stretch * y).toBeCloseTo(240, 6);
    expect(x).toBeLessThan(460);
  });
});

describe('setup and truth beside a troubled film', () => {
  it('follow the mirror: tap, sense and angles, and a check sweep stands alone', () => {
    const plan = planWith({ kind: 'mirrored' });
    const setup = troubledSetup(plan, SETUP, 'clockwise');
    expect(readSetup(setup).ok).toBe(true);
    expect(setup.turnSense).toBe('counter-clockwise');
    expect(setup.sight.edgePoint).toEqual({ xPx: 580, yPx: 400, timeS: 0.4 });
    expect(setup.after).toBeUndefined();
    const { unbalance, shouldRefuse } = troubledTruth(plan, TRUTH);
    expect(unbalance).toEqual({ amountGmm: 5000, heavySpotDeg: 285, lightSpotDeg: 105 });
    expect(shouldRefuse).toBe(false);
  });

  it('leave out what was not entered, and nothing else', () => {
    const bare = troubledSetup(
      planWith({ kind: 'no-tap' }, { kind: 'no-field-of-view' }),
      SETUP,
      'clockwise',
    );
    expect(bare.sight).toEqual({ valveMark: SETUP.sight.valveMark });
    expect(bare.camera).toEqual({ downTiltDeg: 32 });
    expect(bare.turnSense).toBeUndefined();
    expect(bare.wheel).toEqual(SETUP.wheel);
  });

  it('a laser away for longer than can be trusted is to be refused, a short while is not', () => {
    const dark = (lastsS: number) =>
      troubledTruth(planWith({ kind: 'laser-off', atShare: 0.3, lastsS }), TRUTH).shouldRefuse;
    expect(dark(12)).toBe('line-lost');
    expect(dark(3)).toBe(false);
    const drawn = SEEDS.flatMap((seed) => troubledPlan(seed, [LARGE]).troubles).flatMap((t) =>
      t.kind === 'laser-off' ? [t.lastsS] : [],
    );
    // None so near the limit that either answer would be right.
    expect(drawn.filter((s) => s > 5 && s < 11)).toEqual([]);
    expect(drawn.some((s) => s < 5) && drawn.some((s) => s > 11)).toBe(true);
  });
});

it('a hand is open at the fingers and covers the arm’s width below', () => {
  const { widthPx, heightPx, rgba } = handPicture('skin', 100, 200);
  const covered = (row: number) =>
    Array.from({ length: widthPx }, (_, x) => rgba[4 * (row * widthPx + x) + 3]).filter(
      (a) => a > 128,
    ).length;
  expect(covered(0)).toBe(0);
  expect(covered(50)).toBeGreaterThan(40);
  expect(covered(50)).toBeLessThan(75);
  expect(covered(heightPx - 1)).toBeGreaterThan(60);
});
