import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseWeights, type WeightChoice } from '../../../src/balance/weightChoice.ts';
import {
  COMMON_STOCK,
  type WeightKind,
  type WeightRing,
} from '../../../src/balance/weightStock.ts';
import {
  addVectors,
  vectorAmount,
  vectorFromPolar,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { evenNumber, valueOf } from './outcomeHelpers.ts';

const FIVE: WeightKind = { label: '5 g', massG: 5, lengthMm: 13, fitting: 'adhesive' };
const TEN: WeightKind = { label: '10 g', massG: 10, lengthMm: 19, fitting: 'adhesive' };
const ring = (more: Partial<WeightRing> = {}): WeightRing => ({
  radiusMm: 185,
  accepts: ['adhesive'],
  forbidden: [],
  maxPieces: 3,
  ...more,
});
const OUTER: WeightRing = { radiusMm: 214, accepts: ['clip-on'], forbidden: [], maxPieces: 2 };

/** Sum of the places' pulls. */
const pullOf = (choice: WeightChoice): PlaneVector =>
  choice.places
    .map((place) => vectorFromPolar(place.momentGmm, place.angleDeg))
    .reduce(addVectors, { along0: 0, along90: 0 });

describe('chooseWeights keeps its word', () => {
  it('lists each piece where its middle sits: together they pull as promised', () => {
    fc.assert(
      fc.property(evenNumber(0, 70), evenNumber(0, 360), (massG, heavyDeg) => {
        const unbalanceGmm = vectorFromPolar(massG * 185, heavyDeg);
        const choice = valueOf(
          chooseWeights({
            unbalanceGmm,
            kinds: COMMON_STOCK,
            rings: [ring({ maxPieces: 4 }), OUTER],
          }),
        );
        const left = addVectors(unbalanceGmm, pullOf(choice));
        expect(
          vectorAmount(
            addVectors(left, {
              along0: -choice.residualGmm.along0,
              along90: -choice.residualGmm.along90,
            }),
          ),
        ).toBeLessThan(1e-6);
        // Each piece as a point pulls up to x²/6 more than its arc: 0.3 % of its own moment for the
        // longest clip, and pieces on opposite sides have more of it than the unbalance.
        const points = choice.weights
          .map((w) => vectorFromPolar(w.massG * w.radiusMm, w.angleDeg))
          .reduce(addVectors, { along0: 0, along90: 0 });
        const off = addVectors(pullOf(choice), {
          along0: -points.along0,
          along90: -points.along90,
        });
        const momentsGmm = choice.weights.reduce((sum, w) => sum + w.massG * w.radiusMm, 0);
        expect(vectorAmount(off)).toBeLessThan(0.004 * momentsGmm + 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('turns with the wheel and its arcs, and scales with masses', () => {
    const rings = (byDeg: number) => [
      ring({ forbidden: [{ fromDeg: 160 + byDeg, toDeg: 205 + byDeg }] }),
    ];
    const base = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(4300, 12),
        kinds: [FIVE, TEN],
        rings: rings(0),
      }),
    );
    fc.assert(
      fc.property(evenNumber(-720, 720), (byDeg) => {
        const turned = valueOf(
          chooseWeights({
            unbalanceGmm: vectorFromPolar(4300, 12 + byDeg),
            kinds: [FIVE, TEN],
            rings: rings(byDeg),
          }),
        );
        expect(turned.residualAmountGmm).toBeCloseTo(base.residualAmountGmm, 5);
        expect(turned.pieceCount).toBe(base.pieceCount);
      }),
      { numRuns: 30 },
    );
    const mirrored = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(4300, -12),
        kinds: [FIVE, TEN],
        rings: [ring({ forbidden: [{ fromDeg: -205, toDeg: -160 }] })],
      }),
    );
    // Strips of unlike pieces are laid clockwise, so a mirrored wheel may differ within the tie.
    expect(Math.abs(mirrored.residualAmountGmm - base.residualAmountGmm)).toBeLessThan(0.5 * 185);
    expect(mirrored.pieceCount).toBe(base.pieceCount);
    const heavy = valueOf(
      chooseWeights({
        unbalanceGmm: vectorFromPolar(43000, 12),
        kinds: [FIVE, TEN].map((k) => ({ ...k, massG: k.massG * 10 })),
        rings: rings(0),
        sameG: 5,
      }),
    );
    expect(heavy.residualAmountGmm).toBeCloseTo(10 * base.residualAmountGmm, 4);
  });

  it('sets no place against another while one place leaves no more than a weight step above', () => {
    const stock = fc.uniqueArray(fc.constantFrom(2.5, 5, 7, 10, 15, 20, 30), {
      minLength: 1,
      maxLength: 3,
    });
    const arc = fc.tuple(evenNumber(0, 360), evenNumber(0, 150));
    fc.assert(
      fc.property(evenNumber(0, 60), stock, arc, (massG, masses, [fromDeg, spanDeg]) => {
        const unbalanceGmm = vectorFromPolar(massG * 185, 0);
        const input = {
          unbalanceGmm,
          kinds: masses.map((one): WeightKind => ({ ...FIVE, massG: one, lengthMm: 2.6 * one })),
          rings: [ring({ forbidden: [{ fromDeg, toDeg: fromDeg + spanDeg }] })],
          angleStepDeg: 3,
        };
        const choice = valueOf(chooseWeights(input));
        const one = valueOf(chooseWeights({ ...input, places: 1 }));
        const stuckGmm = choice.places.reduce((sum, { momentGmm }) => sum + momentGmm, 0);
        // The choice may leave half a gram more than the least that two such places can leave.
        if (one.residualAmountGmm <= choice.residualAmountGmm + (5 - 0.5) * 185) {
          // Two of them pull at least as much together as the stronger alone, 120° apart at most:
          // no more is stuck on than twice what they pull.
          expect(stuckGmm).toBeLessThanOrEqual(2 * vectorAmount(pullOf(choice)) + 1e-6);
        }
        // What is left out for that costs no more than a weight step.
        expect(choice.residualAmountGmm).toBeLessThanOrEqual(
          one.residualAmountGmm + 1e-6 + 0.5 * 185,
        );
      }),
      // A third place once stood against the first two for a gram and a half.
      { numRuns: 150, examples: [[41.78358, [2.5], [116.01324, 132.0756]]] },
    );
  });
});
