import { describe, expect, it } from 'vitest';

import {
  PRESS_TEST_START,
  pressTestAfter,
  TURN_TEST_START,
  turnTestAfter,
  type PressTest,
  type TurnTest,
} from '../../../src/job/signTest.ts';

/** Ten reports a second, as a camera's sweep gives them. */
const STEP_S = 0.1;
const report = (timeS: number, edgeHeightMm: number | null, turnDeg: number | null = 0) =>
  ({ timeS, stage: 'following', edgeHeightMm, turnDeg, markSeen: false }) as const;

/** What the test says of heights over time. */
function pressed(durationS: number, heightMm: (timeS: number) => number | null): PressTest {
  let test: PressTest = PRESS_TEST_START;
  for (let i = 0; i * STEP_S < durationS; i++) {
    const timeS = i * STEP_S;
    test = pressTestAfter(test, report(timeS, heightMm(timeS)));
  }
  return test;
}

const pressFrom = (startS: number, byMm: number) => (timeS: number) =>
  3 + (timeS < startS ? 0 : byMm * Math.min(1, (timeS - startS) / 0.3));

describe('the press at the sight', () => {
  it('confirms up by an edge that goes down, and tells one that goes up', () => {
    expect(pressed(8, pressFrom(5, -7))).toEqual({ step: 'told', outcome: 'confirmed' });
    expect(pressed(8, pressFrom(5, 7))).toEqual({ step: 'told', outcome: 'reversed' });
  });

  it('asks for the press only once the wheel stands still', () => {
    expect(pressed(2.5, () => 3).step).toBe('settle');
    expect(pressed(3.5, () => 3).step).toBe('press');
  });

  it('says nothing of a wheel that rocks, however it rocks', () => {
    for (const amplitudeMm of [0.2, 0.6, 1, 1.4, 1.6, 2, 3, 6, 12]) {
      for (const periodS of [3, 4, 5.5, 8]) {
        for (let phase = 0; phase < 6; phase += 0.7) {
          const test = pressed(
            40,
            (timeS) => amplitudeMm * Math.sin((2 * Math.PI * timeS) / periodS + phase),
          );
          expect(test.step, `${amplitudeMm} mm, ${periodS} s, ${phase}`).not.toBe('told');
        }
      }
    }
  });

  it('takes no knock for a press, and bears a hand before the tread', () => {
    const knock = (timeS: number) => (timeS > 5 && timeS < 5.3 ? 9 : 3);
    expect(pressed(8, knock).step).toBe('press');
    const hidden = (timeS: number) => (timeS > 4.5 && timeS < 5.5 ? null : pressFrom(5, -7)(timeS));
    expect(pressed(8, hidden)).toEqual({ step: 'told', outcome: 'confirmed' });
  });
});

describe('the turn clockwise', () => {
  const turned = (turns: readonly (number | null)[]): TurnTest =>
    turns.reduce<TurnTest>(
      (test, turnDeg, i) => turnTestAfter(test, report(i * STEP_S, 0, turnDeg)),
      TURN_TEST_START,
    );

  it('is confirmed by a turn seen as clockwise, reversed by the other', () => {
    expect(turned([-40, -30, -22, -19])).toEqual({ step: 'told', outcome: 'confirmed' });
    expect(turned([0, -10, -21])).toEqual({ step: 'told', outcome: 'reversed' });
  });

  it('says nothing of a wheel that swings to and fro', () => {
    const swings = Array.from({ length: 200 }, (_, i) => 8 * Math.sin(i / 5));
    expect(turned(swings).step).toBe('turn');
  });

  it('does not take the tape’s being found for a turn', () => {
    const before = turnTestAfter(TURN_TEST_START, report(0, 0, 5));
    const found = turnTestAfter(before, { ...report(0.1, 0, -200), markSeen: true });
    expect(found).toMatchObject({ step: 'turn', turnedDeg: 0 });
  });
});
