import { describe, expect, it } from 'vitest';

import type { LogEntry } from '../../../src/contract/logbook.ts';
import type { AcceptedReading } from '../../../src/contract/reading.ts';
import { eyePairs } from '../../../src/job/eyePairs.ts';
import { proofOf } from '../../../src/job/proof.ts';
import { proposedStand, proposedWheel } from '../../../src/job/proposals.ts';
import { nextSetup } from '../../../src/job/sweepSetup.ts';
import { sweepPair } from '../../../src/job/sweepPair.ts';
import { proposedPlan, weightPlan, weightsByPlace } from '../../../src/job/weightPlan.ts';
import { wheelState, type AcceptedSweep } from '../../../src/job/wheelState.ts';
import { addVectors, vectorAmount, vectorFromPolar } from '../../../src/quantities/vector.ts';

const STAND = proposedStand();
const WHEEL = proposedWheel('wheel', 'Shed wheel', '2026-03-01T08:00:00.000Z');
const RADIUS_MM = WHEEL.rings[0]!.radiusMm.value;
const at = (minute: number) => `2026-03-01T09:${String(minute).padStart(2, '0')}:00.000Z`;

function reading(amountG: number, heavySpotDeg: number): AcceptedReading {
  const amountGmm = amountG * RADIUS_MM;
  return {
    format: 'tiltsweep.reading/1',
    status: 'ok',
    refusals: [],
    turn: { coveredDeg: 400, sense: 'clockwise', closureDeg: 0 },
    tilt: {
      edgeRiseMm: amountG * 0.42,
      highSpotDeg: (heavySpotDeg + 180) % 360,
      standMrad: 1,
      standHighAzimuthDeg: 0,
      covarianceMm2: [
        [0.01, 0],
        [0, 0.01],
      ],
    },
    unbalance: {
      amountGmm,
      heavySpotDeg,
      lightSpotDeg: (heavySpotDeg + 180) % 360,
      covarianceGmm2: [
        [8000, 0],
        [0, 8000],
      ],
      ci95: {
        amountGmm: [amountGmm - 180, amountGmm + 180],
        angleDeg: [heavySpotDeg - 2, heavySpotDeg + 2],
      },
    },
    response: { mmPerGmm: 0.0023, source: 'model', standardError: 0.00004 },
    correction: [],
    residualGmm: 0,
  };
}

function sweep(id: string, minute: number, amountG: number, heavySpotDeg: number): AcceptedSweep {
  const { setup } = nextSetup(WHEEL, STAND, wheelState([], WHEEL));
  return {
    ...{ id, wheelId: 'wheel', at: at(minute), kind: 'sweep', source: 'camera', setup },
    ...{ assumed: [], filmId: null, reading: reading(amountG, heavySpotDeg), trace: null },
  } as AcceptedSweep;
}

const weights = (minute: number, massG: number, angleDeg: number): LogEntry => ({
  ...{ id: `weights ${minute}`, wheelId: 'wheel', at: at(minute), kind: 'weights' },
  added: [{ massG, radiusMm: RADIUS_MM, angleDeg }],
});
const eye = (minute: number, massG: number, lightSpotDeg: number): LogEntry => ({
  ...{ id: `eye ${minute}`, wheelId: 'wheel', at: at(minute), kind: 'by-eye', blind: true },
  ...{ massG, lightSpotDeg, radiusMm: RADIUS_MM },
});

describe('where a wheel stands', () => {
  it('follows from its entries, whatever their order', () => {
    const first = sweep('a', 1, 28, 75);
    const entries = [weights(2, 30, 255), first];
    expect(wheelState([], WHEEL).stage).toBe('never-read');
    expect(wheelState([first], WHEEL).stage).toBe('read');
    expect(wheelState(entries, WHEEL)).toMatchObject({
      stage: 'weights-on',
      lastSweep: { id: 'a' },
      addedSince: [{ massG: 30 }],
    });
    expect(wheelState([...entries, sweep('b', 3, 2, 75)], WHEEL).stage).toBe('proved');
    expect(wheelState([...entries, sweep('b', 3, 9, 75)], WHEEL).stage).toBe('read');
  });

  it('makes the next sweep a check sweep only when weights were put on', () => {
    const first = sweep('a', 1, 28, 75);
    const repeat = nextSetup(WHEEL, STAND, wheelState([first], WHEEL)).setup;
    expect(repeat.after).toBeUndefined();
    const check = nextSetup(WHEEL, STAND, wheelState([first, weights(2, 30, 255)], WHEEL)).setup;
    expect(check.after).toEqual({
      sweep: 'a',
      added: [{ massG: 30, radiusMm: RADIUS_MM, angleDeg: 255 }],
    });
  });
});

describe('weights for a reading', () => {
  it.each([
    [28, 75],
    [6, 300],
    [61, 181],
  ])('leave what is promised: %d g at %d°', (amountG, heavyDeg) => {
    const plan = weightPlan(reading(amountG, heavyDeg), WHEEL, STAND, { places: 2, ring: null });
    if (!plan.ok) throw new Error(plan.failure.code);
    const pull = plan.value.places
      .map((place) => vectorFromPolar(place.momentGmm, place.angleDeg))
      .reduce(addVectors);
    const left = addVectors(vectorFromPolar(amountG * RADIUS_MM, heavyDeg), pull);
    expect(vectorAmount(left)).toBeCloseTo(plan.value.leftGmm, 6);
    expect(plan.value.leftGmm / RADIUS_MM).toBeLessThan(2.6);
    expect(weightsByPlace(plan.value)).toHaveLength(plan.value.places.length);
  });

  it('keep off blocked stretches', () => {
    const blocked = { ...WHEEL, forbiddenArcs: [{ fromDeg: 235, toDeg: 275 }] };
    const plan = weightPlan(reading(28, 75), blocked, STAND, { places: 2, ring: null });
    if (!plan.ok) throw new Error(plan.failure.code);
    for (const { fromDeg, toDeg } of plan.value.places) {
      expect(fromDeg > 235 && fromDeg < 275).toBe(false);
      expect(toDeg > 235 && toDeg < 275).toBe(false);
    }
  });

  it('are none where the smallest weight would make it worse', () => {
    const plan = weightPlan(reading(1, 75), WHEEL, STAND, { places: 1, ring: null });
    expect(plan).toMatchObject({ ok: true, value: { places: [] } });
  });

  it('are pieces of the weight step as long as no stock was entered', () => {
    const plan = proposedPlan(reading(28, 75), WHEEL, { stock: [] });
    expect(plan).toMatchObject({ ok: true, value: { places: [{ massG: 30, angleDeg: 255 }] } });
    const ounces = { ...WHEEL, weightStepG: 7.0874 };
    const inOunces = proposedPlan(reading(28, 75), ounces, { stock: [] });
    expect(inOunces.ok && inOunces.value.places[0]?.massG).toBeCloseTo(28.35, 2);
  });

  it('need something on hand that fits the rim', () => {
    const stock = [{ label: 'clip', massG: 15, lengthMm: 35, fitting: 'clip-on' as const }];
    const plan = weightPlan(reading(28, 75), WHEEL, { stock }, { places: 2, ring: null });
    expect(plan).toMatchObject({ ok: false, failure: { code: 'stock-empty' } });
  });

  it('are none where no side is clearly heavy', () => {
    const { unbalance, ...rest } = reading(28, 75);
    const unsure = {
      ...rest,
      unbalance: { ...unbalance, ci95: { ...unbalance.ci95, angleDeg: null } },
    };
    expect(proposedPlan(unsure, WHEEL, STAND)).toMatchObject({
      ok: false,
      failure: { code: 'place-unknown' },
    });
  });
});

describe('a sweep and the one before it', () => {
  const first = sweep('a', 1, 28, 75);
  const after = sweep('b', 5, 2, 75);

  it('are held together by what was put on in between', () => {
    const pair = sweepPair(after, [after, weights(3, 30, 255), first]);
    expect(pair).toMatchObject({ before: { id: 'a' }, trims: 1, added: [{ massG: 30 }] });
  });

  it('prove by both measures: one step, and ISO 21940-11 at G 40', () => {
    const passed = proofOf(sweepPair(after, [first, after]), WHEEL, STAND);
    expect(passed).toMatchObject({ ok: true, value: { verdict: { verdict: 'pass' } } });
    const trim = proofOf(sweepPair(sweep('c', 6, 9, 75), []), WHEEL, STAND);
    expect(trim).toMatchObject({ ok: true, value: { verdict: { verdict: 'trim' } } });
    // 16.5 kg, 610 mm, 130 km/h: n = 1130.6 /min, U_per = 9549.3·40·16.5/1130.6 = 5574 g·mm.
    if (!passed.ok) throw new Error(passed.failure.code);
    expect(passed.value.permissibleGmm).toBeCloseTo(5574, -1);
  });
});

describe('readings by eye', () => {
  it('are held against the sweep of the same state: the next one, else the one before', () => {
    const entries = [eye(1, 25, 240), sweep('a', 2, 28, 75), eye(3, 30, 255), weights(4, 30, 255)];
    const pairs = eyePairs(entries);
    expect(pairs.map((pair) => [pair.eye.id, pair.sweep.id])).toEqual([
      ['eye 1', 'a'],
      ['eye 3', 'a'],
    ]);
    expect(pairs[0]!.comparison.angleOffDeg).toBeCloseTo(-15, 9);
    expect(pairs[0]!.comparison.massOffG).toBeCloseTo(-3, 9);
    expect(pairs[1]!.comparison.leftOverG).toBeCloseTo(2, 9);
  });

  it('wait for a sweep when weights went on after the last one', () => {
    expect(eyePairs([sweep('a', 1, 28, 75), weights(2, 30, 255), eye(3, 5, 10)])).toEqual([]);
  });
});
