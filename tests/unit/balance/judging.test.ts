import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { compareByEye, eyeHabit } from '../../../src/balance/byEye.ts';
import { clockFromWheelAngle, wheelAngleFromText } from '../../../src/balance/clock.ts';
import { addedCouple, COUPLE_CAUTION } from '../../../src/balance/couple.ts';
import { BALANCE_FAILURES, failureWords } from '../../../src/balance/failures.ts';
import { unbalanceFromFourRuns } from '../../../src/balance/fourRun.ts';
import { poolRepeats } from '../../../src/balance/repeats.ts';
import { residualMeaning } from '../../../src/balance/residualMeaning.ts';
import { splitCorrection } from '../../../src/balance/splitCorrection.ts';
import { layStrip, stripMomentGmm } from '../../../src/balance/stripArc.ts';
import * as tolerance from '../../../src/balance/tolerance.ts';
import { trialCorrection } from '../../../src/balance/trialCorrection.ts';
import {
  beadSeatDiameterMm,
  rimDiameterMm,
  tyreDimensions,
} from '../../../src/balance/tyreDimensions.ts';
import { tyreSizeFromText } from '../../../src/balance/tyreSize.ts';
import { CAUSE_WORDS, verdictOn } from '../../../src/balance/verdict.ts';
import {
  addVectors,
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneCovariance,
} from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

const angle = evenNumber(0, 360);

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

describe('by eye', () => {
  it('says how far off in angle and grams, and what would be left', () => {
    const seen = valueOf(
      compareByEye(vectorFromPolar(20 * 185, 30), { lightSpotDeg: 225, massG: 18 }, 185),
    );
    expect(seen.angleOffDeg).toBeCloseTo(15, 9);
    expect(seen.massOffG).toBeCloseTo(-2, 9);
    // Cosine rule: 20² + 18² − 2·20·18·cos 15°.
    expect(seen.leftOverG).toBeCloseTo(Math.sqrt(724 - 720 * Math.cos(Math.PI / 12)), 9);
  });

  it('is null where there is nothing to point at', () => {
    const nothing = { along0: 0, along90: 0 };
    expect(
      valueOf(compareByEye(nothing, { lightSpotDeg: 10, massG: 5 }, 185)).angleOffDeg,
    ).toBeNull();
    expect(
      valueOf(compareByEye(vectorFromPolar(900, 0), { lightSpotDeg: 10, massG: 0 }, 185))
        .angleOffDeg,
    ).toBeNull();
    expect(failureOf(compareByEye(nothing, { lightSpotDeg: 10, massG: -5 }, 185)).code).toBe(
      'input-out-of-range',
    );
  });

  it('learns bias and scatter from a logbook', () => {
    const normal = seededNormal(31);
    const log = Array.from({ length: 2000 }, () => ({
      angleOffDeg: 172 + 12 * normal() > 180 ? 172 - 360 + 12 : 172,
      massOffG: -3 + 2 * normal(),
    }));
    const habit = valueOf(eyeHabit(log));
    expect(habit.massBiasG).toBeCloseTo(-3, 0);
    expect(Math.abs((habit.massScatterG ?? 0) - 2)).toBeLessThan(0.15);
    const turns = Array.from({ length: 4000 }, () => ({
      angleOffDeg: 170 + 15 * normal(),
      massOffG: 0,
    }));
    const wrapped = valueOf(eyeHabit(turns));
    // Across the seam at 180° a plain mean would be useless.
    expect(Math.abs((wrapped.angleBiasDeg ?? 0) - 170)).toBeLessThan(1);
    expect(Math.abs((wrapped.angleScatterDeg ?? 0) - 15)).toBeLessThan(0.8);
  });

  it('says only what the log can tell', () => {
    expect(failureOf(eyeHabit([])).code).toBe('sweeps-too-few');
    expect(valueOf(eyeHabit([{ angleOffDeg: 5, massOffG: 1 }]))).toMatchObject({
      angleScatterDeg: null,
      massScatterG: null,
    });
    expect(valueOf(eyeHabit([{ angleOffDeg: null, massOffG: 1 }])).angleBiasDeg).toBeNull();
    const opposite = [0, 180].map((angleOffDeg) => ({ angleOffDeg, massOffG: 0 }));
    expect(valueOf(eyeHabit(opposite)).angleBiasDeg).toBeNull();
    expect(failureOf(eyeHabit([{ angleOffDeg: 0, massOffG: Number.NaN }])).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('clock positions', () => {
  it.each([
    ['8:30', 255],
    ['12', 0],
    ['12:00', 0],
    ["7 o'clock", 210],
    ['3.15', 97.5],
    ['255°', 255],
    ['-30 deg', 330],
    ['370,5 degrees', 10.5],
  ])('%s is %f°', (text, deg) => {
    expect(valueOf(wheelAngleFromText(text))).toBeCloseTo(deg, 9);
  });

  it.each(['', '13:00', '8:75', 'left', '8:3'])('"%s" is refused', (text) => {
    expect(failureOf(wheelAngleFromText(text)).code).toBe('clock-unreadable');
  });

  it('writes to the half hour and reads it again within a quarter', () => {
    expect(valueOf(clockFromWheelAngle(255))).toBe('8:30');
    expect(valueOf(clockFromWheelAngle(359))).toBe('12:00');
    expect(failureOf(clockFromWheelAngle(Number.NaN)).code).toBe('input-out-of-range');
    expect(failureOf(wheelAngleFromText('9999999999°')).code).toBe('input-out-of-range');
    fc.assert(
      fc.property(angle, (deg) => {
        const again = valueOf(wheelAngleFromText(valueOf(clockFromWheelAngle(deg))));
        expect(Math.abs(((again - deg + 540) % 360) - 180)).toBeLessThanOrEqual(7.5 + 1e-9);
      }),
    );
  });
});

describe('repeats', () => {
  const none: PlaneCovariance = [
    [0, 0],
    [0, 0],
  ];
  const at = (along0: number, along90: number, c: PlaneCovariance = none) => ({
    unbalanceGmm: { along0, along90 },
    covarianceGmm2: c,
  });

  it('takes the mean and says what the seat adds', () => {
    const c: PlaneCovariance = [
      [400, 0],
      [0, 400],
    ];
    const pooled = valueOf(poolRepeats([at(1000, 0, c), at(1100, 0, c), at(1050, 80, c)]));
    expect(pooled.mean.unbalanceGmm.along0).toBeCloseTo(1050, 9);
    expect(pooled.outliers).toEqual([]);
    expect(pooled.seatErrorGmm ** 2 + 400).toBeCloseTo(pooled.scatterGmm ** 2, 6);
  });

  it('keeps to the stated errors where the repeats agree better', () => {
    const c: PlaneCovariance = [
      [400, 10],
      [10, 900],
    ];
    const pooled = valueOf(poolRepeats([at(1000, 0, c), at(1000, 0, c)]));
    expect(pooled.seatErrorGmm).toBe(0);
    expect(pooled.mean.covarianceGmm2).toEqual([
      [200, 5],
      [5, 450],
    ]);
  });

  it.each([2, 4, 8])('holds the truth 95 times in 100 with %i sweeps', (n) => {
    const normal = seededNormal(41 + n);
    const runs = 3000;
    let held = 0;
    for (let i = 0; i < runs; i += 1) {
      const sweeps = Array.from({ length: n }, () => at(1000 + 60 * normal(), 60 * normal()));
      const { mean } = valueOf(poolRepeats(sweeps));
      const off = subtractVectors(mean.unbalanceGmm, { along0: 1000, along90: 0 });
      const variance = mean.covarianceGmm2[0][0];
      if (vectorAmount(off) ** 2 / variance <= 5.991465) held += 1;
    }
    // Sampling error 0.4 %; throwing out a sweep wrongly now and then costs less than 1 %.
    expect(Math.abs(held / runs - 0.95)).toBeLessThan(0.02);
  });

  it('finds one sweep that stands out, seldom one in sound series', () => {
    const normal = seededNormal(53);
    const series = (n: number) =>
      Array.from({ length: n }, () => at(1000 + 30 * normal(), 30 * normal()));
    let wrong = 0;
    for (let i = 0; i < 1000; i += 1) {
      if (valueOf(poolRepeats(series(6))).outliers.length > 0) wrong += 1;
    }
    // 1 % by design; 1000 series scatter by 0.3 %.
    expect(wrong / 1000).toBeLessThan(0.025);
    const sweeps = series(6);
    sweeps[3] = at(2500, 900);
    const pooled = valueOf(poolRepeats(sweeps));
    expect(pooled.outliers).toEqual([3]);
    expect(Math.abs(pooled.mean.amountGmm - 1000)).toBeLessThan(60);
    const two = [...series(8), at(2500, 900), at(-4000, 900)];
    expect([...valueOf(poolRepeats(two)).outliers].sort()).toEqual([8, 9]);
    // Equal sweeps to the last digit have no scatter to measure by, and none stands out.
    expect(valueOf(poolRepeats([at(1, 1), at(1, 1), at(1, 1), at(1, 1)])).outliers).toEqual([]);
  });

  it('names what it lacks', () => {
    expect(failureOf(poolRepeats([at(1, 1)])).code).toBe('sweeps-too-few');
    expect(failureOf(poolRepeats([at(1, 1), at(Number.NaN, 1)])).code).toBe('input-out-of-range');
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

describe('splitting, trial and four runs', () => {
  it('the two shares add up to the correction', () => {
    fc.assert(
      fc.property(angle, evenNumber(1, 85), evenNumber(1, 85), (at, back, ahead) => {
        const split = valueOf(
          splitCorrection({
            amount: 40,
            angleDeg: at,
            placeADeg: at - back,
            placeBDeg: at + ahead,
          }),
        );
        const sum = addVectors(
          vectorFromPolar(split.atA, at - back),
          vectorFromPolar(split.atB, at + ahead),
        );
        expect(vectorAmount(subtractVectors(sum, vectorFromPolar(40, at)))).toBeLessThan(1e-9);
      }),
    );
  });

  it('a place on the spot carries all; places on one side are refused', () => {
    expect(
      valueOf(splitCorrection({ amount: 40, angleDeg: 10, placeADeg: 10, placeBDeg: 60 })).atA,
    ).toBeCloseTo(40, 9);
    for (const [placeADeg, placeBDeg] of [
      [20, 60],
      [10, 10],
      [280, 100],
      [200, 0],
    ] as const) {
      expect(
        failureOf(splitCorrection({ amount: 40, angleDeg: 10, placeADeg, placeBDeg })).code,
      ).toBe('places-not-either-side');
    }
    expect(
      failureOf(splitCorrection({ amount: -1, angleDeg: 10, placeADeg: 0, placeBDeg: 60 })).code,
    ).toBe('input-out-of-range');
  });

  it('a trial that changes nothing is refused', () => {
    const v = vectorFromPolar(3, 10);
    expect(failureOf(trialCorrection(v, v, vectorFromPolar(5, 0))).code).toBe('trial-too-small');
    expect(failureOf(trialCorrection(v, { along0: Number.NaN, along90: 0 }, v)).code).toBe(
      'input-out-of-range',
    );
  });

  it('four runs find any unbalance again from its amounts', () => {
    fc.assert(
      fc.property(angle, evenNumber(1, 100), (heavyDeg, amount) => {
        const u = vectorFromPolar(amount, heavyDeg);
        const read = (at: number) => 0.08 * vectorAmount(addVectors(u, vectorFromPolar(20, at)));
        const found = valueOf(
          unbalanceFromFourRuns({
            bare: 0.08 * amount,
            at0: read(0),
            at120: read(120),
            at240: read(240),
            trial: 20,
          }),
        );
        expect(vectorAmount(subtractVectors(found, u))).toBeLessThan(1e-6 * amount + 1e-9);
      }),
    );
  });

  it('four runs of a balanced wheel are nothing; contradicting ones are refused', () => {
    const runs = { bare: 0, at0: 2, at120: 2, at240: 2, trial: 20 };
    expect(vectorAmount(valueOf(unbalanceFromFourRuns(runs)))).toBeCloseTo(0, 9);
    expect(valueOf(unbalanceFromFourRuns({ ...runs, bare: 1, trial: 1 })).along90).toBeCloseTo(
      0,
      9,
    );
    expect(failureOf(unbalanceFromFourRuns({ ...runs, bare: 5 })).code).toBe('amounts-contradict');
    expect(failureOf(unbalanceFromFourRuns({ ...runs, at0: 0, at120: 0, at240: 0 })).code).toBe(
      'amounts-contradict',
    );
    expect(failureOf(unbalanceFromFourRuns({ ...runs, trial: 0 })).code).toBe('input-out-of-range');
  });
});

describe('strips as arcs', () => {
  it('pull sin(x)/x of their moment', () => {
    expect(valueOf(stripMomentGmm(60, 185, 185))).toBeCloseTo(60 * 185 * (Math.sin(0.5) / 0.5), 9);
    expect(valueOf(stripMomentGmm(60, 0, 185))).toBe(60 * 185);
    expect(failureOf(stripMomentGmm(60, -1, 185)).code).toBe('input-out-of-range');
  });

  it('pieces side by side pull as one long strip', () => {
    const piece = { massG: 5, lengthMm: 13 };
    const laid = layStrip(new Array(8).fill(piece), 185);
    expect(laid.momentGmm).toBeCloseTo(valueOf(stripMomentGmm(40, 104, 185)), 9);
    expect(laid.behindDeg).toBeCloseTo(laid.aheadDeg, 9);
    expect(laid.offsetsDeg[0]).toBeCloseTo(-(laid.offsetsDeg[7] ?? 0), 9);
  });

  it('balance nearer to the heavy piece', () => {
    const laid = layStrip(
      [
        { massG: 20, lengthMm: 20 },
        { massG: 5, lengthMm: 20 },
      ],
      185,
    );
    expect(laid.behindDeg).toBeLessThan(laid.aheadDeg);
  });
});

describe('tyre sizes', () => {
  it.each([
    ['205/55 R16 91V', 'metric', 205, 55, 16, false],
    ['P205/55ZR16', 'metric', 205, 55, 16, false],
    ['lt235/85r16', 'metric', 235, 85, 16, true],
    ['195/65 R 15 C 104/102', 'metric', 195, 65, 15, true],
    ['215/75R17.5', 'metric', 215, 75, 17.5, false],
    ['165 R 13', 'metric-without-aspect', 165, 82, 13, false],
    ['185R14C', 'metric-without-aspect', 185, 82, 14, true],
    ['7.50-16', 'inch', 190.5, 103, 16, false],
    ['6,00R16 LT', 'inch', 152.4, 103, 16, true],
  ] as const)('%s', (text, form, width, aspect, rim, isLightTruck) => {
    const size = valueOf(tyreSizeFromText(text));
    expect(size).toMatchObject({ form, aspectPercent: aspect, rimCode: rim, isLightTruck });
    expect(size.sectionWidthMm).toBeCloseTo(width, 9);
    expect(size.isAspectAssumed).toBe(form !== 'metric');
  });

  it('reads the overall diameter of flotation sizes off the sidewall', () => {
    const size = valueOf(tyreSizeFromText('31x10.50 R15 LT'));
    expect(size).toMatchObject({ form: 'flotation', rimCode: 15, isLightTruck: true });
    expect(valueOf(tyreDimensions(size)).overallDiameterMm).toBeCloseTo(31 * 25.4, 9);
  });

  it.each(['', 'sixteen inch', '205-55-16', '205/55', '20555R16'])('"%s" is unreadable', (text) => {
    expect(failureOf(tyreSizeFromText(text)).code).toBe('tyre-size-unreadable');
  });

  it.each([
    ['999/55R16', 'sectionWidthMm'],
    ['205/05R16', 'aspectPercent'],
    ['205/55R61', 'rimCode'],
    ['12x10.50R15', 'aspectPercent'],
  ])('%s is impossible: %s', (text, quantity) => {
    expect(failureOf(tyreSizeFromText(text))).toMatchObject({
      code: 'tyre-size-impossible',
      evidence: { quantity },
    });
  });

  it('proposes radii as assumed, near those of a known wheel', () => {
    const dimensions = valueOf(tyreDimensions(valueOf(tyreSizeFromText('205/55R16'))));
    expect(Math.abs(dimensions.edgeRadius.valueMm - 305)).toBeLessThan(3);
    expect(Math.abs(dimensions.adhesiveWeightRadius.valueMm - 185)).toBeLessThan(3);
    expect(dimensions.clipOnWeightRadius.valueMm).toBeGreaterThan(202);
    expect(dimensions.edgeRadius.origin).toBe('assumed');
  });

  it('has plain-inch seats for half codes, and names codes that no rim has', () => {
    expect(valueOf(beadSeatDiameterMm(17.5))).toBeCloseTo(444.5, 9);
    expect(failureOf(beadSeatDiameterMm(99)).code).toBe('input-out-of-range');
    expect(failureOf(rimDiameterMm(Number.NaN)).code).toBe('input-out-of-range');
    const size = valueOf(tyreSizeFromText('205/55R16'));
    expect(failureOf(tyreDimensions({ ...size, sectionWidthMm: Number.NaN })).code).toBe(
      'input-out-of-range',
    );
    expect(failureOf(tyreDimensions({ ...size, rimCode: 99 })).code).toBe('input-out-of-range');
  });

  it('angles of nothing are nothing', () => {
    expect(vectorAngleDeg({ along0: 0, along90: 0 })).toBe(0);
  });
});
