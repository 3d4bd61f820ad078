import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { chooseWeights, type WeightChoice } from '../../../src/balance/weightChoice.ts';
import {
  COMMON_STOCK,
  type WeightKind,
  type WeightRing,
  type WheelArc,
} from '../../../src/balance/weightStock.ts';
import { wrapTurnDeg } from '../../../src/quantities/angle.ts';
import {
  addVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, valueOf } from './outcomeHelpers.ts';

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

/** Sum of the places' pulls. */
const pullOf = (choice: WeightChoice): PlaneVector =>
  choice.places
    .map((place) => vectorFromPolar(place.momentGmm, place.angleDeg))
    .reduce(addVectors, { along0: 0, along90: 0 });

/**
 * Brute force, written apart from the search: every load of every ring at every angle of the grid,
 * alone and with every other; checks arcs and overlaps by sampling the strips every half degree.
 */
function bruteForce(
  u: PlaneVector,
  kinds: readonly WeightKind[],
  rings: readonly WeightRing[],
  sameG: number,
  stepDeg: number,
): { pieces: number; places: number; residualGmm: number } {
  interface Spot {
    ring: number;
    counts: number[];
    pieces: number;
    fromDeg: number;
    spanDeg: number;
    pull: PlaneVector;
  }
  const origin = vectorAngleDeg(u) + 180;
  const spots: Spot[] = [];
  for (const [r, { radiusMm, accepts, forbidden, maxPieces }] of rings.entries()) {
    const counts = kinds.map(() => 0);
    const visit = (k: number): void => {
      if (k < kinds.length) {
        const most = accepts.includes(kinds[k]!.fitting) ? (kinds[k]!.onHand ?? maxPieces) : 0;
        for (let c = 0; c <= most; c += 1) {
          counts[k] = c;
          visit(k + 1);
        }
        counts[k] = 0;
        return;
      }
      const pieces = counts.reduce((a, b) => a + b, 0);
      if (pieces === 0 || pieces > maxPieces) return;
      // The strip by itself, from 0 on: pulls of thin slices summed.
      let edgeDeg = 0;
      let sum: PlaneVector = { along0: 0, along90: 0 };
      kinds.forEach((kind, i) => {
        for (let c = 0; c < counts[i]!; c += 1) {
          const spanDeg = (kind.lengthMm / radiusMm) * (180 / Math.PI);
          const slices = 400;
          for (let s = 0; s < slices; s += 1) {
            const at = edgeDeg + (spanDeg * (s + 0.5)) / slices;
            sum = addVectors(sum, vectorFromPolar((kind.massG * radiusMm) / slices, at));
          }
          edgeDeg += spanDeg;
        }
      });
      const behindDeg = vectorAngleDeg(sum);
      for (let at = 0; at < 360; at += stepDeg) {
        const angle = origin + at;
        const fromDeg = angle - behindDeg;
        if (forbidden.some((arc) => overlap(fromDeg, edgeDeg, arc.fromDeg, spanOf(arc)))) continue;
        spots.push({
          ring: r,
          counts: [...counts],
          pieces,
          fromDeg,
          spanDeg: edgeDeg,
          pull: vectorFromPolar(vectorAmount(sum), angle),
        });
      }
    };
    visit(0);
  }
  const levels = new Map<string, { pieces: number; places: number; residualGmm: number }>();
  const note = (pieces: number, places: number, left: PlaneVector): void => {
    const key = `${String(pieces).padStart(3, '0')}/${places}`;
    const residualGmm = vectorAmount(left);
    if (residualGmm < (levels.get(key)?.residualGmm ?? Infinity)) {
      levels.set(key, { pieces, places, residualGmm });
    }
  };
  note(0, 0, u);
  for (const [i, a] of spots.entries()) {
    const left = addVectors(u, a.pull);
    note(a.pieces, 1, left);
    for (let j = i + 1; j < spots.length; j += 1) {
      const b = spots[j]!;
      if (a.ring === b.ring && overlap(a.fromDeg, a.spanDeg, b.fromDeg, b.spanDeg)) continue;
      if (kinds.some((k, n) => a.counts[n]! + b.counts[n]! > (k.onHand ?? Infinity))) continue;
      note(a.pieces + b.pieces, 2, addVectors(left, b.pull));
    }
  }
  const sorted = [...levels.entries()].sort(([p], [q]) => (p < q ? -1 : 1)).map(([, v]) => v);
  const sameGmm = sameG * Math.min(...rings.map((r) => r.radiusMm));
  const least = Math.min(...sorted.map((v) => v.residualGmm));
  const limit = least <= sameGmm ? sameGmm : least + sameGmm;
  return sorted.find((v) => v.residualGmm <= limit)!;
}

const spanOf = (arc: WheelArc): number =>
  arc.toDeg - arc.fromDeg >= 360 ? 360 : wrapTurnDeg(arc.toDeg - arc.fromDeg);

/** Two arcs share more than a border. */
function overlap(from1: number, span1: number, from2: number, span2: number): boolean {
  const ahead = wrapTurnDeg(from2 - from1);
  const back = wrapTurnDeg(from1 - from2);
  const slack = 1e-9;
  return ahead < span1 - slack || back < span2 - slack || (ahead === 0 && span1 > 0 && span2 > 0);
}

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
        // Each piece as a point pulls up to x²/6 more than its arc: 0.3 % for the longest clip.
        const points = choice.weights
          .map((w) => vectorFromPolar(w.massG * w.radiusMm, w.angleDeg))
          .reduce(addVectors, { along0: 0, along90: 0 });
        const off = addVectors(pullOf(choice), {
          along0: -points.along0,
          along90: -points.along90,
        });
        expect(vectorAmount(off)).toBeLessThan(0.004 * massG * 185 + 1e-6);
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
