import { describe, expect, it } from 'vitest';
import { chooseWeights } from '../../../src/balance/weightChoice.ts';
import {
  COMMON_STOCK,
  type WeightKind,
  type WeightRing,
} from '../../../src/balance/weightStock.ts';
import { wrapTurnDeg } from '../../../src/quantities/angle.ts';
import { addVectors, vectorFromPolar } from '../../../src/quantities/vector.ts';
import { failureOf, valueOf } from './outcomeHelpers.ts';
import { bruteForce, overlap } from './weightBruteForce.ts';

const FIVE: WeightKind = { label: '5 g', massG: 5, lengthMm: 13, fitting: 'adhesive' };
const TEN: WeightKind = { label: '10 g', massG: 10, lengthMm: 19, fitting: 'adhesive' };
const CLIP: WeightKind = { label: '15 g clip', massG: 15, lengthMm: 35, fitting: 'clip-on' };
const ring = (more: Partial<WeightRing> = {}): WeightRing => ({
  radiusMm: 185,
  accepts: ['adhesive'],
  forbidden: [],
  maxPieces: 3,
  ...more,
});
const OUTER: WeightRing = { radiusMm: 214, accepts: ['clip-on'], forbidden: [], maxPieces: 2 };

describe('chooseWeights', () => {
  it('puts whole pieces at the light spot when nothing is in the way', () => {
    const choice = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(10 * 185, 30),
        kinds: [FIVE, TEN],
        rings: [ring()],
      }),
    );
    expect(choice.places).toHaveLength(1);
    expect(choice.places[0]!.pieces.map((p) => p.label)).toEqual(['10 g']);
    expect(choice.places[0]!.angleDeg).toBeCloseTo(210, 9);
    expect(choice.isExact).toBe(true);
  });

  it('sticks nothing where nothing is missing', () => {
    const choice = valueOf(
      chooseWeights({ unbalanceGmm: vectorFromPolar(60, 30), kinds: [FIVE], rings: [ring()] }),
    );
    expect(choice).toMatchObject({ places: [], weights: [], pieceCount: 0 });
    expect(choice.residualAmountGmm).toBeCloseTo(60, 9);
  });

  it('splits over two places where the spot is blocked', () => {
    const choice = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(20 * 185, 0),
        kinds: [FIVE, TEN],
        rings: [ring({ forbidden: [{ fromDeg: 150, toDeg: 210 }] })],
      }),
    );
    expect(choice.places).toHaveLength(2);
    for (const { fromDeg, toDeg } of choice.places) {
      for (const edge of [fromDeg, toDeg])
        expect(edge <= 150 + 1e-9 || edge >= 210 - 1e-9).toBe(true);
    }
    expect(choice.residualAmountGmm).toBeLessThan(0.5 * 185);
  });

  it('keeps to one place when told so', () => {
    const input = {
      unbalanceGmm: vectorFromPolar(27 * 185, 0),
      kinds: [FIVE, TEN],
      rings: [ring()],
    };
    const one = valueOf(chooseWeights({ ...input, places: 1 }));
    expect(one.places).toHaveLength(1);
    const two = valueOf(chooseWeights(input));
    expect(two.residualAmountGmm).toBeLessThan(one.residualAmountGmm);
  });

  describe('where two places would work against one another', () => {
    const clips = [15, 20, 30].map((massG): WeightKind => ({
      ...CLIP,
      massG,
      label: `${massG} g`,
    }));
    const choose = (massG: number, kinds: readonly WeightKind[], more: Partial<WeightRing> = {}) =>
      valueOf(
        chooseWeights({
          unbalanceGmm: vectorFromPolar(massG * 185, 0),
          kinds,
          rings: [ring({ accepts: ['clip-on'], maxPieces: 2, ...more })],
        }),
      );

    it('sticks one on and leaves a little: not 20 g against 30 g for 11.5 g', () => {
      const choice = choose(11.5, clips);
      expect(choice.weights.map(({ massG }) => massG)).toEqual([15]);
      expect(choice.residualAmountGmm / 185).toBeLessThan(5);
    });

    it('takes them where nothing else comes near, and then the lightest', () => {
      const choice = choose(11.5, clips.slice(1));
      expect(choice.weights.map(({ massG }) => massG)).toEqual([20, 20]);
      expect(choice.residualAmountGmm / 185).toBeLessThan(0.5);
    });

    it('still goes round a wide blocked stretch', () => {
      // Each strip's middle comes no nearer to the spot than some 70°, and a single one leaves 19 g.
      const forbidden = [{ fromDeg: 120, toDeg: 240 }];
      const choice = choose(20, [FIVE], { accepts: ['adhesive'], forbidden, maxPieces: 8 });
      expect(choice.places).toHaveLength(2);
      expect(choice.residualAmountGmm / 185).toBeLessThan(3);
    });
  });

  it.each([
    [
      'one ring, three arcs',
      [FIVE, TEN],
      [
        ring({
          forbidden: [
            { fromDeg: 160, toDeg: 215 },
            { fromDeg: 300, toDeg: 20 },
            { fromDeg: 90, toDeg: 90 },
          ],
        }),
      ],
      0.5,
    ],
    [
      'two rings',
      [FIVE, CLIP],
      [ring({ maxPieces: 2, forbidden: [{ fromDeg: 170, toDeg: 190 }] }), OUTER],
      0.5,
    ],
    ['least residual at any price', [FIVE, TEN], [ring({ maxPieces: 2 })], 0],
    [
      'few on hand',
      [
        { ...FIVE, onHand: 1 },
        { ...TEN, onHand: 2 },
      ],
      [ring({ forbidden: [{ fromDeg: 178, toDeg: 182 }] })],
      0.5,
    ],
    ['a coarse tie', [FIVE, TEN], [ring({ maxPieces: 3 })], 3],
  ] as const)('leaves what brute force leaves: %s', (_, kinds, rings, sameG) => {
    let compared = 0;
    for (const [massG, heavyDeg] of [
      [3, 10],
      [12.6, 3],
      [18.3, 177],
      [27.4, 0],
      [55, 95.5],
    ] as const) {
      const unbalanceGmm = vectorFromPolar(massG * 185, heavyDeg);
      const angleStepDeg = 5;
      const found = valueOf(chooseWeights({ unbalanceGmm, kinds, rings, sameG, angleStepDeg }));
      const brute = bruteForce(unbalanceGmm, kinds, rings, sameG, angleStepDeg);
      if (!found.isExact) continue;
      compared += 1;
      expect(found.pieceCount).toBe(brute.pieces);
      expect(found.places.length).toBe(brute.places);
      // The brute force sums slices of 1/400 of a piece: good to 1e-6 of the moment.
      expect(Math.abs(found.residualAmountGmm - brute.residualGmm)).toBeLessThan(0.01);
    }
    expect(compared).toBeGreaterThanOrEqual(3);
  });

  it('adds further places where two cannot hold enough, and says so', () => {
    const choice = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(80 * 185, 40),
        kinds: [FIVE, { ...TEN, onHand: 5 }],
        rings: [ring({ maxPieces: 2 })],
      }),
    );
    expect(choice.isExact).toBe(false);
    expect(choice.places.length).toBeGreaterThan(2);
    const tens = choice.places.flatMap((p) => p.pieces).filter((p) => p.massG === 10);
    expect(tens.length).toBeLessThanOrEqual(5);
    const spans = choice.places.map((p) => [p.fromDeg, wrapTurnDeg(p.toDeg - p.fromDeg)] as const);
    spans.forEach(([a, s], i) =>
      spans.slice(i + 1).forEach(([b, t]) => expect(overlap(a, s - 1e-6, b, t - 1e-6)).toBe(false)),
    );
  });

  it('leaves everything where all is forbidden or nothing fits', () => {
    const unbalanceGmm = vectorFromPolar(3000, 40);
    const all = valueOf(
      chooseWeights({
        unbalanceGmm,
        kinds: [FIVE],
        rings: [ring({ forbidden: [{ fromDeg: 0, toDeg: 360 }] })],
      }),
    );
    expect(all.residualAmountGmm).toBeCloseTo(3000, 9);
    const none = valueOf(chooseWeights({ unbalanceGmm, kinds: [CLIP], rings: [ring()] }));
    expect(none.places).toEqual([]);
  });

  it('does not lay two strips on each other where there is room for one only', () => {
    const choice = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(20 * 185, 0),
        kinds: [FIVE],
        rings: [ring({ maxPieces: 1, forbidden: [{ fromDeg: 185, toDeg: 175 }] })],
        angleStepDeg: 5,
      }),
    );
    expect(choice.places).toHaveLength(1);
    expect(choice.places[0]!.angleDeg).toBeCloseTo(180, 9);
  });

  it('takes old weights off as negative mass before it adds', () => {
    const old = { massG: 15, radiusMm: 185, angleDeg: 300 };
    const choice = valueOf(
      chooseWeights({
        unbalanceGmm: addVectors(vectorFromPolar(10 * 185, 30), vectorFromPolar(15 * 185, 300)),
        kinds: [TEN],
        rings: [ring()],
        takenOff: [old],
      }),
    );
    expect(choice.weights[0]).toEqual({ ...old, massG: -15 });
    expect(choice.weights).toHaveLength(2);
    expect(choice.residualAmountGmm).toBeLessThan(0.5 * 185);
  });

  it('names what cannot be right', () => {
    const input = { unbalanceGmm: vectorFromPolar(3000, 0), kinds: [FIVE], rings: [ring()] };
    const code = (more: Partial<Parameters<typeof chooseWeights>[0]>) =>
      failureOf(chooseWeights({ ...input, ...more })).code;
    expect(code({ kinds: [] })).toBe('stock-empty');
    expect(code({ rings: [] })).toBe('stock-empty');
    expect(code({ kinds: [{ ...FIVE, massG: 0 }] })).toBe('input-out-of-range');
    expect(code({ rings: [ring({ radiusMm: Number.NaN })] })).toBe('input-out-of-range');
    expect(code({ rings: [ring({ forbidden: [{ fromDeg: Number.NaN, toDeg: 3 }] })] })).toBe(
      'input-out-of-range',
    );
    expect(code({ sameG: -1 })).toBe('input-out-of-range');
    expect(code({ angleStepDeg: 0 })).toBe('input-out-of-range');
    expect(code({ unbalanceGmm: { along0: Number.NaN, along90: 0 } })).toBe('input-out-of-range');
    expect(code({ takenOff: [{ massG: Infinity, radiusMm: 1, angleDeg: 0 }] })).toBe(
      'input-out-of-range',
    );
    expect(code({ kinds: COMMON_STOCK, rings: [ring({ maxPieces: 60 })] })).toBe('stock-too-large');
    expect(code({ rings: [ring({ maxPieces: 1e6 })] })).toBe('input-out-of-range');
  });
});
