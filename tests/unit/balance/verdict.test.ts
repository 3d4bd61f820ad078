import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addedCouple, COUPLE_CAUTION } from '../../../src/balance/couple.ts';
import { BALANCE_FAILURES, failureWords } from '../../../src/balance/failures.ts';
import { residualMeaning } from '../../../src/balance/residualMeaning.ts';
import * as tolerance from '../../../src/balance/tolerance.ts';
import { CAUSE_WORDS, verdictOn } from '../../../src/balance/verdict.ts';
import { vectorFromPolar } from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, valueOf } from './outcomeHelpers.ts';

describe('words for failures', () => {
  it('are plain and whole for every code', () => {
    for (const [code, words] of Object.entries(BALANCE_FAILURES)) {
      expect(failureWords({ code: code as keyof typeof BALANCE_FAILURES, evidence: {} })).toBe(
        words,
      );
      for (const text of [words.cause, words.remedy]) {
        expect(text).toMatch(/^[A-Z].*\.$/);
        expect(text).not.toContain('!');
      }
    }
  });
});

describe('verdict', () => {
  const base = {
    residualGmm: 500,
    residualSdGmm: 50,
    permissibleGmm: 6300,
    weightStepG: 5,
    weightRadiusMm: 185,
    trimsDone: 0,
    edgeWaveMm: 0.4,
    seatErrorGmm: 100,
    plateDents: false,
  };
  const on = (more: Partial<typeof base>) => valueOf(verdictOn({ ...base, ...more }));

  it('passes within one step, trims above it', () => {
    expect(on({})).toMatchObject({
      verdict: 'pass',
      withinIso: true,
      withinOneStep: true,
      isClose: false,
      causes: [],
    });
    expect(on({ residualGmm: 1000 })).toMatchObject({
      verdict: 'trim',
      withinIso: true,
      withinOneStep: false,
      isClose: true,
    });
    expect(on({ residualGmm: 800, permissibleGmm: 700 })).toMatchObject({
      verdict: 'trim',
      withinIso: false,
      withinOneStep: true,
    });
  });

  it('looks for another cause where weights will not help, dents first', () => {
    const all = on({
      residualGmm: 2000,
      trimsDone: 2,
      edgeWaveMm: 2,
      seatErrorGmm: 600,
      plateDents: true,
    });
    expect(all.verdict).toBe('look-for-another-cause');
    expect(all.causes).toEqual(['dents', 'seat', 'run-out', 'does-not-converge']);
    for (const cause of all.causes) expect(CAUSE_WORDS[cause].length).toBeGreaterThan(10);
    // A wavy edge on a balanced wheel is worth a word, but the wheel passes.
    expect(on({ edgeWaveMm: 2, trimsDone: 3 })).toMatchObject({
      verdict: 'pass',
      causes: ['run-out'],
    });
  });

  it('names what cannot be right', () => {
    expect(failureOf(verdictOn({ ...base, residualGmm: Number.NaN })).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('couple', () => {
  const base = {
    correctionGmm: 5000,
    axialDistanceMm: 0,
    permissibleGmm: 6000,
    planeSpacingMm: 160,
  };
  it('grows with the distance from the middle plane', () => {
    expect(valueOf(addedCouple(base)).finding).toBe('slight');
    const off = valueOf(addedCouple({ ...base, axialDistanceMm: -50 }));
    expect(off).toMatchObject({
      coupleGmm2: 250000,
      permissibleGmm2: 480000,
      finding: 'noticeable',
    });
    expect(valueOf(addedCouple({ ...base, axialDistanceMm: 120 })).finding).toBe('too-much');
    expect(failureOf(addedCouple({ ...base, planeSpacingMm: 0 })).code).toBe('input-out-of-range');
    expect(COUPLE_CAUTION).toMatch(/neither seen nor cured/);
  });
});

describe('what is left on the road', () => {
  const input = {
    residualGmm: vectorFromPolar(1850, 77),
    weightRadiusMm: 185,
    massKg: 18,
    roadSpeedKmh: 130,
    overallDiameterMm: 631.9,
  };
  it('is grams, grade and force', () => {
    const meaning = valueOf(residualMeaning(input));
    expect(meaning.massG).toBeCloseTo(10, 9);
    expect(meaning.heavySpotDeg).toBeCloseTo(77, 9);
    expect(meaning.speedPerMin).toBeCloseTo(1091.4, 1);
    expect(meaning.gradeMmPerS).toBeCloseTo((1850 * 1091.4) / (9549.3 * 18), 2);
    expect(meaning.forceN).toBeCloseTo(1850e-6 * ((1091.4 * 2 * Math.PI) / 60) ** 2, 2);
  });
  it('names what cannot be right, wherever it is used', () => {
    for (const wrong of [
      { weightRadiusMm: 0 },
      { overallDiameterMm: 0 },
      { massKg: 0 },
      { roadSpeedKmh: 1e9, overallDiameterMm: 1e-9 },
    ]) {
      expect(failureOf(residualMeaning({ ...input, ...wrong })).code).toBe('input-out-of-range');
    }
  });
});

describe('tolerance', () => {
  it('is undone by the grade', () => {
    fc.assert(
      fc.property(evenNumber(0.1, 4000), (gradeMmPerS) => {
        const w = { massKg: 18, speedPerMin: 1091 };
        const amountGmm = valueOf(tolerance.permissibleUnbalanceGmm({ ...w, gradeMmPerS }));
        expect(
          valueOf(tolerance.gradeOfUnbalanceMmPerS({ ...w, amountGmm })) / gradeMmPerS,
        ).toBeCloseTo(1, 9);
      }),
    );
  });
  it('names what cannot be right', () => {
    const nan = Number.NaN;
    expect(
      failureOf(tolerance.permissibleUnbalanceGmm({ gradeMmPerS: nan, massKg: 1, speedPerMin: 1 }))
        .code,
    ).toBe('input-out-of-range');
    expect(
      failureOf(tolerance.gradeOfUnbalanceMmPerS({ amountGmm: nan, massKg: 1, speedPerMin: 1 }))
        .code,
    ).toBe('input-out-of-range');
    expect(failureOf(tolerance.unbalanceForceN(1, nan)).code).toBe('input-out-of-range');
    expect(failureOf(tolerance.wheelSpeedPerMin(nan, 1)).code).toBe('input-out-of-range');
    expect(
      failureOf(
        tolerance.permissibleByPlane({
          permissibleGmm: 1,
          centreToPlaneAMm: 0,
          centreToPlaneBMm: 1,
        }),
      ).code,
    ).toBe('input-out-of-range');
  });
});
