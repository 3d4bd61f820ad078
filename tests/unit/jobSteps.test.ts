import { describe, expect, it } from 'vitest';

import type { LogEntry, SweepEntry, WheelRecord } from '../../src/contract/logbook.ts';
import { JOB_STEPS, jobSteps, nextStepOfRecord } from '../../src/job/jobSteps.ts';
import { proposedStand, proposedWheel, wheelOfSetup } from '../../src/job/proposals.ts';
import { wheelState, withStateOf } from '../../src/job/wheelState.ts';
import { acceptedReading, refusedReading, shedSetup } from '../browser/gallery/fixtures.ts';

const stand = proposedStand();
const known = wheelOfSetup('w', shedSetup, '2026-03-01T08:00:00.000Z');
const assumed = proposedWheel('w', 'rear left', '2026-03-01T08:00:00.000Z');

function sweep(id: string, minute: number, amountG: number, isCheck = false): SweepEntry {
  const after = { sweep: 'before', added: [{ massG: 30, radiusMm: 185, angleDeg: 255 }] };
  return {
    id,
    wheelId: 'w',
    at: `2026-03-01T08:${minute}:00.000Z`,
    kind: 'sweep',
    source: 'camera',
    setup: { ...shedSetup, ...(isCheck ? { after } : {}) },
    assumed: [],
    filmId: null,
    reading: acceptedReading({ amountG, heavyDeg: 75, sdG: 0.4 }),
    trace: null,
  };
}

const weights: LogEntry = {
  id: 'stuck',
  wheelId: 'w',
  at: '2026-03-01T08:20:00.000Z',
  kind: 'weights',
  added: [{ massG: 30, radiusMm: 185, angleDeg: 255 }],
};

function pathOf(wheel: WheelRecord, entries: readonly LogEntry[]) {
  const path = jobSteps(wheel, wheelState(entries, wheel), stand);
  return { ...path, told: path.steps.map(({ progress }) => progress).join(' ') };
}

describe('the steps of a wheel’s job', () => {
  it('begins at the bench while mass or radii are assumed', () => {
    const path = pathOf(assumed, []);
    expect(path.next).toEqual({ kind: 'bench' });
    expect(path.told).toBe('now later later later later later');
    expect(path.assumed).toContain('wheel.massKg');
  });

  it('goes on to the sight once they are known', () => {
    const path = pathOf(known, []);
    expect(path.next).toEqual({ kind: 'sweep' });
    expect(path.told).toBe('done now later later later later');
  });

  it('asks for weights after the first reading, and says which reading', () => {
    const path = pathOf(known, [sweep('s1', 10, 28)]);
    expect(path.next).toEqual({ kind: 'weights', entryId: 's1' });
    expect(path.told).toBe('done done done done now later');
    expect(path.steps[3]!.entryId).toBe('s1');
  });

  it('asks for the check sweep once weights are on', () => {
    const path = pathOf(known, [sweep('s1', 10, 28), weights]);
    expect(path.next).toEqual({ kind: 'check' });
    expect(path.told).toBe('done done done done done now');
  });

  it('leads to the verdict when the check finds more than a weight', () => {
    const path = pathOf(known, [sweep('s1', 10, 28), weights, sweep('s2', 30, 9, true)]);
    expect(path.next).toEqual({ kind: 'verdict', entryId: 's2' });
  });

  it('is done when at most one weight step is left', () => {
    const path = pathOf(known, [sweep('s1', 10, 28), weights, sweep('s2', 30, 3, true)]);
    expect(path.next).toEqual({ kind: 'proved', entryId: 's2' });
    expect(new Set(path.steps.map(({ progress }) => progress))).toEqual(new Set(['done']));
  });

  it('does not call the bench done when it was passed by', () => {
    expect(pathOf(assumed, [sweep('s1', 10, 28)]).told).toBe('skipped done done done now later');
  });

  it('does not let a refused sweep move the job on', () => {
    const refused: LogEntry = { ...sweep('s1', 10, 28), reading: refusedReading('line-lost') };
    expect(pathOf(known, [refused]).next).toEqual({ kind: 'sweep' });
  });

  it('wants a sweep first where weights went on before any', () => {
    expect(pathOf(known, [weights]).next).toEqual({ kind: 'sweep' });
  });

  it('names each step once, whatever the state', () => {
    expect(pathOf(known, []).steps.map(({ name }) => name)).toEqual([...JOB_STEPS]);
  });
});

describe('the next step from the record alone', () => {
  it('agrees with the one from all entries, also after a check that left too much', () => {
    const failedCheck = [weights, sweep('s2', 30, 9, true)];
    const histories = [[], [sweep('s1', 10, 28)], [sweep('s1', 10, 28), weights], failedCheck];
    for (const entries of histories) {
      const record = withStateOf(known, entries);
      expect(nextStepOfRecord(record)).toEqual(pathOf(known, entries).next);
    }
    expect(nextStepOfRecord(withStateOf(known, failedCheck)).kind).toBe('verdict');
  });
});
