import { describe, expect, it } from 'vitest';
import { ballBehaviour } from '../../../src/balance/ballBehaviour.ts';
import { chooseBall } from '../../../src/balance/ballChoice.ts';
import { ballDiameterFromText } from '../../../src/balance/ballDiameter.ts';
import {
  centreDepthMm,
  pendulumDepthFromResponse,
  pendulumDepthMm,
  seatHeightMm,
} from '../../../src/balance/ballSeat.ts';
import { modelResponse } from '../../../src/balance/response.ts';
import { centreDepthFromWeighings } from '../../../src/balance/twoWeighings.ts';
import { failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

const seat = { ballDiameterMm: 63.5, boreDiameterMm: 60.1 };
const wheel = {
  massKg: 16.5,
  boreDiameterMm: 60.1,
  centreDepthMm: 18,
  edgeRadiusMm: 305,
  weightRadiusMm: 185,
  cameraRangeMm: 25,
};

describe('seat', () => {
  it('is a leg of the triangle of ball radius and bore radius', () => {
    expect(valueOf(seatHeightMm({ ballDiameterMm: 50, boreDiameterMm: 30 }))).toBeCloseTo(20, 12);
  });

  it('gives h from d and d from h', () => {
    const h = valueOf(pendulumDepthMm(seat, 18));
    expect(valueOf(centreDepthMm(seat, h))).toBeCloseTo(18, 12);
  });

  it('names a ball that falls through and values that cannot be', () => {
    const small = { ...seat, ballDiameterMm: 60 };
    expect(failureOf(seatHeightMm(small)).code).toBe('ball-through-bore');
    expect(failureOf(pendulumDepthMm(small, 18)).code).toBe('ball-through-bore');
    expect(failureOf(centreDepthMm(small, 8)).code).toBe('ball-through-bore');
    expect(failureOf(seatHeightMm({ ...seat, boreDiameterMm: 0 })).code).toBe('input-out-of-range');
    expect(failureOf(pendulumDepthMm(seat, Number.NaN)).code).toBe('input-out-of-range');
    expect(failureOf(centreDepthMm(seat, Infinity)).code).toBe('input-out-of-range');
  });

  it('finds h again from the response that it makes, with its error', () => {
    const { mmPerGmm } = valueOf(
      modelResponse({ massKg: 16.5, edgeRadiusMm: 305, pendulumDepthMm: 8 }),
    );
    const input = {
      mmPerGmm,
      mmPerGmmStandardError: 0.03 * mmPerGmm,
      massKg: 16.5,
      massSdKg: 0,
      edgeRadiusMm: 305,
      edgeRadiusSdMm: 0.04 * 305,
    };
    const depth = valueOf(pendulumDepthFromResponse(input));
    expect(depth.pendulumDepthMm).toBeCloseTo(8, 9);
    expect(depth.standardErrorMm).toBeCloseTo(0.05 * 8, 9);
    expect(failureOf(pendulumDepthFromResponse({ ...input, mmPerGmm: 0 })).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('two weighings', () => {
  const input = {
    upperRailLoadKg: 6,
    lowerRailLoadKg: 10,
    scaleSdKg: 0.05,
    railSpacingMm: 160,
    seatFromUpperRailMm: 82,
    rulerSdMm: 0.5,
  };

  it('are a lever: 160·10/16 = 100 mm from the upper rail', () => {
    const centre = valueOf(centreDepthFromWeighings(input));
    expect(centre.massKg).toBe(16);
    expect(centre.centreDepthMm).toBeCloseTo(18, 12);
  });

  it('state the error that simulated weighings scatter by', () => {
    const normal = seededNormal(3);
    const runs = 3000;
    const found = Array.from(
      { length: runs },
      () =>
        valueOf(
          centreDepthFromWeighings({
            ...input,
            upperRailLoadKg: 6 + 0.05 * normal(),
            lowerRailLoadKg: 10 + 0.05 * normal(),
            railSpacingMm: 160 + 0.5 * normal(),
            seatFromUpperRailMm: 82 + 0.5 * normal(),
          }),
        ).centreDepthMm,
    );
    const scatter = Math.sqrt(found.reduce((s, x) => s + (x - 18) ** 2, 0) / runs);
    const stated = valueOf(centreDepthFromWeighings(input)).standardErrorMm;
    // Sampling error of the scatter: 1.3 %.
    expect(Math.abs(scatter / stated - 1)).toBeLessThan(0.05);
  });

  it('name a wheel of no weight', () => {
    const nothing = { ...input, upperRailLoadKg: 0, lowerRailLoadKg: 0 };
    expect(failureOf(centreDepthFromWeighings(nothing)).evidence['quantity']).toBe('massKg');
  });
});

describe('ball diameters as people write them', () => {
  it.each([
    ['63.5', 63.5],
    ['63,5 mm', 63.5],
    [' 80MM ', 80],
    ['2 1/2 in', 63.5],
    ['2½"', 63.5],
    ['2-1/2"', 63.5],
    ['1 15/16″', 49.2125],
    ['2 3/8', 60.325],
    ['7/8 inch', 22.225],
    ['3 inches', 76.2],
    ['45 1/2 mm', 45.5],
    ['1¾', 44.45],
  ])('%s is %f mm', (text, mm) => {
    expect(valueOf(ballDiameterFromText(text))).toBeCloseTo(mm, 9);
  });

  it.each([
    ['', 'diameter-unreadable'],
    ['mm', 'diameter-unreadable'],
    ['about two', 'diameter-unreadable'],
    ['2 1/0 in', 'diameter-unreadable'],
    ['900 mm', 'diameter-unreadable'],
    ['0/0', 'diameter-unreadable'],
    ['3', 'diameter-unit-missing'],
    ['2.5', 'diameter-unit-missing'],
  ])('%s is refused: %s', (text, code) => {
    expect(failureOf(ballDiameterFromText(text)).code).toBe(code);
  });
});

describe('what a ball does', () => {
  it('says where its lean ends, in the camera or on the seat', () => {
    const seen = valueOf(ballBehaviour(wheel, 63.5));
    expect(seen.limitedBy).toBe('camera');
    expect(seen.gyration).toBe('assumed');
    const h = seen.pendulumDepthMm;
    expect(seen.largestUnbalanceGmm).toBeCloseTo(16500 * h * Math.tan(Math.asin(25 / 305)), 6);
    const small = {
      ...wheel,
      boreDiameterMm: 4,
      centreDepthMm: 40,
      cameraRangeMm: 100,
      transverseGyrationMm: 170,
    };
    const onSeat = valueOf(ballBehaviour(small, 63.5));
    expect(onSeat.limitedBy).toBe('seat');
    expect(onSeat.gyration).toBe('entered');
    expect(onSeat.largestUnbalanceGmm).toBeCloseTo(
      16500 * onSeat.pendulumDepthMm * Math.tan(Math.asin(4 / 63.5)),
      6,
    );
  });

  it('rolls off no slope when the centre of mass hangs under the plate', () => {
    expect(
      valueOf(ballBehaviour({ ...wheel, centreDepthMm: 100 }, 63.5)).rollOffSlopeMrad,
    ).toBeNull();
  });

  it('names why not', () => {
    expect(failureOf(ballBehaviour(wheel, 80)).code).toBe('wheel-tips-over');
    expect(failureOf(ballBehaviour(wheel, 50)).code).toBe('ball-through-bore');
    expect(failureOf(ballBehaviour({ ...wheel, massKg: -1 }, 63.5)).code).toBe(
      'input-out-of-range',
    );
    expect(failureOf(ballBehaviour({ ...wheel, centreDepthMm: Number.NaN }, 63.5)).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('choosing a ball', () => {
  const wishes = { centreDepthSdMm: 0.7, weightStepG: 5, expectedUnbalanceGmm: 5000 };
  const findings = (ballsMm: number[], more = {}, w = wheel) =>
    valueOf(chooseBall(w, ballsMm, { ...wishes, ...more })).ranked.map((r) => [
      r.ballDiameterMm,
      r.finding,
    ]);

  it('ranks steady and lively first, what does not stand last', () => {
    const choice = valueOf(chooseBall(wheel, [80, 60, 63.5, 62, 68], wishes));
    expect(choice.ranked.map((r) => [r.ballDiameterMm, r.finding])).toEqual([
      [63.5, 'good'],
      [62, 'good'],
      [68, 'touchy'],
      [80, 'tips-over'],
      [60, 'through-bore'],
    ]);
    expect(choice.recommended?.ballDiameterMm).toBe(63.5);
    expect(choice.recommended?.reason).toMatch(/Steady/);
  });

  it('calls a deep-hanging wheel dull and a wild one a tall order', () => {
    expect(findings([63.5, 62], {}, { ...wheel, centreDepthMm: 40 })).toEqual([
      [63.5, 'dull'],
      [62, 'dull'],
    ]);
    expect(findings([63.5, 62], { expectedUnbalanceGmm: 1e6 })).toEqual([
      [62, 'tall-order'],
      [63.5, 'tall-order'],
    ]);
  });

  it('finds slow rocking touchy too', () => {
    const slow = { ...wheel, transverseGyrationMm: 500 };
    expect(findings([63.5], {}, slow)).toEqual([[63.5, 'touchy']]);
    expect(findings([63.5], { centreDepthSdMm: 3 })).toEqual([[63.5, 'touchy']]);
  });

  it('recommends none where none is safe, keeping equals in their order', () => {
    const choice = valueOf(chooseBall(wheel, [90, 80], wishes));
    expect(choice.recommended).toBeNull();
    expect(choice.ranked.map((r) => r.ballDiameterMm)).toEqual([90, 80]);
    expect(failureOf(chooseBall(wheel, [], wishes)).code).toBe('no-balls');
    expect(failureOf(chooseBall(wheel, [63.5, -1], wishes)).code).toBe('input-out-of-range');
    expect(failureOf(chooseBall(wheel, [63.5], { ...wishes, weightStepG: -5 })).code).toBe(
      'input-out-of-range',
    );
  });
});
