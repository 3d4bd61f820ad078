import { describe, expect, it } from 'vitest';

import type { Reading, Weight } from '../../../src/contract/reading.ts';
import { practiceStep as stepOf } from '../../../src/screens/practice/practiceStep.ts';
import type { PracticeState } from '../../../src/session/practice/practiceRoom.ts';
import { acceptedReading, refusedReading, shedSetup } from '../../browser/gallery/fixtures.ts';

const fresh: PracticeState = {
  // Of the stand only what was entered is asked for.
  stand: { setup: shedSetup } as PracticeState['stand'],
  guess: null,
  sweeps: [],
  weights: [],
  truthShown: false,
};
const practiceStep = (state: PracticeState) => stepOf(state, []);
const GUESS = { lightSpotDeg: 100, massG: 30 };
const ON: readonly Weight[] = [{ massG: 30, radiusMm: 185, angleDeg: 255 }];

function swept(reading: Reading, changes: Partial<PracticeState> = {}): PracticeState {
  const state = { ...fresh, ...changes };
  const sweeps = [{ result: { reading, trace: null }, withWeights: state.weights }];
  return { ...state, sweeps };
}

const HEAVY = acceptedReading({ amountG: 28, heavyDeg: 75, sdG: 0.45 });
// So little that no side is told from the others.
const BALANCED = acceptedReading({ amountG: 0.4, heavyDeg: 75, sdG: 0.6 });

describe('what the practice wheel asks for', () => {
  it('is a guess by eye first, then a reading', () => {
    expect(practiceStep(fresh)).toEqual({ todo: 'guess' });
    expect(practiceStep({ ...fresh, guess: GUESS })).toEqual({ todo: 'read' });
    expect(practiceStep({ ...fresh, weights: ON })).toEqual({ todo: 'read' });
  });

  it('is the weights that the reading advises, then the proof', () => {
    const read = swept(HEAVY);
    const step = practiceStep(read);
    expect(step.todo).toBe('stick');
    // Of 5 g each, and 28 g opposite to 75°.
    const weights = step.todo === 'stick' ? step.weights : [];
    expect(weights).toHaveLength(1);
    expect(weights[0]).toMatchObject({ massG: 30, radiusMm: 185 });
    expect(weights[0]!.angleDeg).toBeCloseTo(255, 1);
    expect(practiceStep({ ...read, weights: ON })).toEqual({ todo: 'prove' });
  });

  it('is weights that are on hand, where some were entered and fit', () => {
    const own = { label: '12 g', massG: 12, lengthMm: 25, fitting: 'adhesive', onHand: 2 } as const;
    const step = stepOf(swept(HEAVY), [own]);
    expect(step).toMatchObject({ todo: 'stick', weights: [{ massG: 24 }] });
    // None that could be stuck on: the wheel's own pieces.
    const clips = stepOf(swept(HEAVY), [{ ...own, fitting: 'clip-on' }]);
    expect(clips).toMatchObject({ todo: 'stick', weights: [{ massG: 30 }] });
  });

  it('is nothing more once no weight would help, and then another wheel', () => {
    const proved = swept(BALANCED, { weights: ON });
    expect(practiceStep(proved)).toEqual({ todo: 'done' });
    expect(practiceStep({ ...proved, truthShown: true })).toEqual({ todo: 'leave' });
    // Weights taken off again by hand: that has not been read.
    expect(practiceStep({ ...proved, weights: [] })).toEqual({ todo: 'prove' });
  });

  it('is another sweep where one gave no figure', () => {
    expect(practiceStep(swept(refusedReading('line-lost')))).toEqual({ todo: 'again' });
  });
});
