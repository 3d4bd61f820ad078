import { describe, expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { fitLean, leanBasis, riseAt } from '../../../src/measure/edge/leanFit.ts';
import { profileShift } from '../../../src/measure/edge/profileShift.ts';
import { textureCorrelations } from '../../../src/measure/turn/textureCorrelation.ts';
import { textureShift } from '../../../src/measure/turn/textureShift.ts';
import { textureView } from '../../../src/measure/turn/textureView.ts';
import { correlationAtShift } from '../../fakes/correlationAtShift.ts';

const ROWS = 201;

/** Ribs and grooves with soft borders, luma by row, moved up by so many rows. */
function ribs(upRows: number, gain = 1, offset = 0): Float32Array {
  const soft = (at: number): number => 1 / (1 + Math.exp(-at / 1.2));
  return Float32Array.from({ length: ROWS }, (_, row) => {
    const r = row + upRows;
    const groove = soft(r - 80) - soft(r - 98) + soft(r - 140) - soft(r - 158);
    return offset + gain * (95 - 60 * groove + 4 * Math.sin(r / 7));
  });
}

describe('profileShift', () => {
  const window = { first: 40, last: 180 };
  const shift = (profile: Float32Array, centreRows = 0, reachRows = 8) =>
    profileShift(ribs(0), 0, profile, 0, ROWS, window, { centreRows, reachRows });

  it('finds parts of a row, blind to gain and offset of the light', () => {
    for (const up of [-4.3, -0.5, 0, 0.25, 1.7, 5.6]) {
      const found = shift(ribs(up, 0.6, 30));
      // A parabola through correlation's peak is off by some hundredths of a row.
      expect(Math.abs((found?.upRows ?? NaN) - up)).toBeLessThan(0.08);
      expect(found?.correlation).toBeGreaterThan(0.98);
    }
  });

  it('follows the rows that weigh, where others move by another way', () => {
    // Above row 120 a shift of 2, below of 1: two grooves that do not move alike.
    const [upper, lower] = [ribs(2), ribs(1)];
    const profile = upper.map((v, row) => (row < 120 ? v : lower[row]!));
    const near = Float32Array.from({ length: ROWS }, (_, row) => (row < 115 ? 1 : 0.02));
    const far = near.map((w) => 1.02 - w);
    const weighed = (rowWeight: Float32Array) =>
      profileShift(ribs(0), 0, profile, 0, ROWS, window, {
        ...{ centreRows: 0, reachRows: 8, rowWeight },
      });
    expect(Math.abs((weighed(near)?.upRows ?? NaN) - 2)).toBeLessThan(0.1);
    expect(Math.abs((weighed(far)?.upRows ?? NaN) - 1)).toBeLessThan(0.1);
    const even = weighed(new Float32Array(ROWS).fill(0.5));
    expect(even?.upRows).toBeCloseTo(shift(profile)!.upRows, 5);
    expect(even?.standardErrorRows).toBeCloseTo(shift(profile)!.standardErrorRows, 5);
  });

  it('leaves out rows that weigh nothing, and says nothing where none weighs', () => {
    const weighed = (weighs: (row: number) => boolean) =>
      profileShift(ribs(0), 0, ribs(2), 0, ROWS, window, {
        ...{ centreRows: 0, reachRows: 8 },
        rowWeight: Float32Array.from({ length: ROWS }, (_, row) => (weighs(row) ? 1 : 0)),
      });
    expect(Math.abs((weighed((row) => row < 120)?.upRows ?? NaN) - 2)).toBeLessThan(0.1);
    expect(weighed(() => false)).toBeNull();
  });

  it('comes to an end on a profile without a number', () => {
    expect(shift(new Float32Array(ROWS).fill(NaN))).toBeNull();
    expect(shift(new Float32Array(ROWS).fill(Infinity))).toBeNull();
  });

  it('leaves out unknown rows', () => {
    const profile = ribs(2);
    profile.fill(NaN, 76, 92);
    expect(Math.abs((shift(profile)?.upRows ?? NaN) - 2)).toBeLessThan(0.15);
    profile.fill(NaN, 20, 170);
    expect(shift(profile)).toBeNull();
  });

  it('says nothing at the border of its search', () => {
    expect(shift(ribs(20))?.upRows ?? NaN).not.toBeCloseTo(8);
    expect(shift(ribs(12), 0, 8)).toBeNull();
    expect(shift(ribs(12), 10, 8)?.upRows).toBeCloseTo(12, 0);
  });

  it('scatters in noise as much as its standard error says', () => {
    const normal = normalFrom(seededRandom(8));
    const scaled = Array.from({ length: 200 }, () => {
      const profile = ribs(1.3).map((v) => v + 6 * normal());
      const found = shift(profile)!;
      return (found.upRows - 1.3) / found.standardErrorRows;
    });
    const rms = Math.sqrt(scaled.reduce((s, x) => s + x * x, 0) / scaled.length);
    // One independent row in three is assumed of pictures; here every row is: 1/√3 and its spread.
    expect(rms).toBeGreaterThan(0.4);
    expect(rms).toBeLessThan(1.2);
  });
});

describe('leanFit', () => {
  const azimuths = Float64Array.from({ length: 19 }, (_, i) => -45 + 5 * i);
  const basis = leanBasis(
    azimuths,
    azimuths.map((a) => 310 + (a * a) / 200),
  );
  const lean = { liftMm: 0.05, toward: 0.012, across: -0.021 };
  const risen = () => Float64Array.from(azimuths, (_, b) => riseAt(basis, lean, b));
  const even = new Float64Array(19).fill(0.1);
  const loose = { liftMm: 0, liftSdMm: 100 };

  it('gives back an exact lean', () => {
    const fit = fitLean(basis, risen(), even, loose)!;
    expect(fit.toward).toBeCloseTo(lean.toward, 6);
    expect(fit.across).toBeCloseTo(lean.across, 8);
    expect(fit.residualMm).toBeLessThan(1e-3);
    expect(fit.blocksUsed).toBe(19);
  });

  it('is not drawn away by blocks that hopped', () => {
    const shifts = risen();
    for (const b of [2, 3, 11]) shifts[b] += 8;
    shifts[7] = NaN;
    const fit = fitLean(basis, shifts, even, { liftMm: 0.05, liftSdMm: 0.12 })!;
    // Three of eighteen blocks, 8 mm off: what is left of them is a few hundredths of a mm.
    expect(Math.abs(fit.toward - lean.toward) * 310).toBeLessThan(0.1);
    expect(Math.abs(fit.across - lean.across) * 310).toBeLessThan(0.1);
    expect(fit.blocksUsed).toBe(15);
  });

  it('keeps to what is believed of the lift, and to a believed lean where nothing is seen', () => {
    const fit = fitLean(basis, risen(), even, { liftMm: 0.05, liftSdMm: 1e-3 })!;
    expect(fit.liftMm).toBeCloseTo(0.05, 3);
    const few = new Float64Array(19).fill(NaN);
    for (let b = 0; b < 7; b++) few[b] = 0;
    const believed = { toward: 0.004, across: 0, sd: 1e-6 };
    const held = fitLean(basis, few, even, { liftMm: 0, liftSdMm: 10, lean: believed })!;
    expect(held.toward).toBeCloseTo(0.004, 4);
    few.fill(NaN, 5);
    expect(fitLean(basis, few, even, loose)).toBeNull();
  });

  it('turns with its input', () => {
    const mirrored = risen().toReversed();
    const fit = fitLean(basis, mirrored, even, loose)!;
    expect(fit.across).toBeCloseTo(-lean.across, 8);
    expect(fit.toward).toBeCloseTo(lean.toward, 6);
  });
});

describe('textureShift', () => {
  const COLUMNS = 400;
  const STRIPS = 6;

  /** Smooth random tread, moved left by so many columns (parts too). */
  function texture(left: number, seed = 3): Int8Array {
    const random = seededRandom(seed);
    const waves = Array.from({ length: STRIPS }, () =>
      Array.from({ length: 40 }, () => [0.04 + 0.35 * random(), 2 * Math.PI * random()] as const),
    );
    const out = new Int8Array(COLUMNS * STRIPS);
    for (let s = 0; s < STRIPS; s++) {
      for (let c = 0; c < COLUMNS; c++) {
        const value = waves[s].reduce((sum, [k, p]) => sum + Math.sin(k * (c + left) + p), 0);
        out[s * COLUMNS + c] = Math.round(8 * value) || 1;
      }
    }
    return out;
  }

  const viewOf = (values: Int8Array) => textureView(values, COLUMNS);
  const find = (after: Int8Array, centreColumns = 0, reachColumns = 40, before = texture(0)) =>
    textureShift(viewOf(before), viewOf(after), { centreColumns, reachColumns });

  it('finds parts of a column either way', () => {
    for (const left of [-33.4, -1.5, 0, 0.3, 7.8, 31.2]) {
      const found = find(texture(left));
      expect(Math.abs((found?.leftColumns ?? NaN) - left)).toBeLessThan(0.06);
      expect(found?.correlation).toBeGreaterThan(0.95);
      expect(found?.rivalCorrelation).toBeLessThan(0.6);
    }
  });

  it('counts only what both views know', () => {
    const before = texture(0);
    const after = texture(12);
    // What stands still, and strongly, in a third of both views; then masked out of both.
    const standing = texture(0, 99).map((v) => (v > 0 ? 120 : -120));
    for (let s = 0; s < STRIPS; s++) {
      const [from, to] = [s * COLUMNS + 150, s * COLUMNS + 280];
      before.set(standing.subarray(from, to), from);
      after.set(standing.subarray(from, to), from);
    }
    const scores = textureCorrelations(viewOf(before), viewOf(after), 0, 13);
    expect(scores[0]).toBeGreaterThan(scores[12]);
    for (let s = 0; s < STRIPS; s++) {
      before.fill(0, s * COLUMNS + 150, s * COLUMNS + 280);
      after.fill(0, s * COLUMNS + 150, s * COLUMNS + 280);
    }
    const found = find(after, 0, 40, before);
    expect(Math.abs((found?.leftColumns ?? NaN) - 12)).toBeLessThan(0.06);
  });

  it('is null for another tread’s border peak, an unknown one, or too little overlap', () => {
    expect(find(texture(60))?.correlation ?? 0).toBeLessThan(0.6);
    expect(find(new Int8Array(COLUMNS * STRIPS))).toBeNull();
    expect(textureCorrelations(viewOf(texture(0)), viewOf(texture(0)), 350, 1)[0]).toBe(-2);
  });

  it('is to the bit what the plain sums over the cells known in both give, at every shift', () => {
    const random = seededRandom(11);
    for (const unknownShare of [0, 0.01, 0.3, 0.6]) {
      const [before, after] = [texture(0), texture(5)].map((values) =>
        values.map((v) => (random() < unknownShare ? 0 : Math.max(-127, Math.min(127, 5 * v)))),
      );
      // Whole strips and stretches are unknown too: the picture's border, the laser's glow.
      before.fill(0, 2 * COLUMNS, 3 * COLUMNS);
      after.fill(0, 2 * COLUMNS + 200, 3 * COLUMNS + 60);
      const [first, count] = [-COLUMNS - 20, 2 * COLUMNS + 40];
      const scores = textureCorrelations(viewOf(before), viewOf(after), first, count);
      const plain = scores.map((_, k) => correlationAtShift(before, after, COLUMNS, first + k));
      expect(scores).toEqual(plain);
      const each3rd = textureCorrelations(viewOf(before), viewOf(after), first, count, 3);
      expect(each3rd).toEqual(plain.map((score, k) => (k % 3 === 0 ? score : -2)));
      expect(plain.filter((score) => score > -2).length).toBeGreaterThan(300);
    }
  });
});
