import { describe, expect, it } from 'vitest';

import { turningHand } from '../../../src/session/practice/turningHand.ts';
import { FASTEST_STEP_DEG } from '../../../src/contract/turnSpeed.ts';

const STEP_S = 0.02;
/** Time between pictures with a graphics unit, and without. */
const PICTURE_MS = [33, 100];

/** Lets the hand follow for so long and tells where it is after each step. */
function follow(hand: ReturnType<typeof turningHand>, durationS: number, pictureMs: number) {
  const turns: number[] = [];
  for (let t = 0; t < durationS; t += STEP_S) {
    hand.advance(STEP_S, pictureMs);
    turns.push(hand.leads()!.turnDeg);
  }
  return turns;
}

describe('a finger on the practice wheel', () => {
  it.each(PICTURE_MS)('leads it to where the finger stops, %d ms a picture', (pictureMs) => {
    const hand = turningHand(() => 40);
    hand.turnBy(0);
    for (let k = 0; k < 5; k++) {
      hand.turnBy(2);
      follow(hand, 0.3, pictureMs);
    }
    expect(follow(hand, 1.5, pictureMs).at(-1)).toBeCloseTo(50, 1);
    expect(hand.leads()!.rateDegPerS).toBeCloseTo(0, 1);
  });

  it.each(PICTURE_MS)('is never too fast to be read, however it is thrown, %d ms', (pictureMs) => {
    const hand = turningHand(() => 0);
    hand.turnBy(0);
    const turns: number[] = [];
    for (let k = 0; k < 20; k++) {
      hand.turnBy(30);
      turns.push(...follow(hand, 0.1, pictureMs));
    }
    const perPicture = pictureMs / (1000 * STEP_S);
    const steps = turns.slice(1).map((turn, i) => (turn - turns[i]) * perPicture);
    expect(Math.max(...steps)).toBeLessThan(FASTEST_STEP_DEG);
    // But it does turn, and on after a finger that ran ahead only a little.
    expect(turns.at(-1)).toBeGreaterThan(30);
    expect(follow(hand, 3, pictureMs).at(-1)! - turns.at(-1)!).toBeLessThan(15);
  });

  it('grips a wheel that coasts where it is now', () => {
    let turnDeg = 10;
    const hand = turningHand(() => turnDeg);
    hand.turnBy(0);
    hand.release();
    expect(hand.leads()).toBeNull();
    turnDeg = 90;
    hand.turnBy(0);
    expect(hand.leads()!.turnDeg).toBe(90);
  });

  it('takes the wheel from the hand that turns by itself', () => {
    const hand = turningHand(() => 0);
    hand.turnOn();
    expect(follow(hand, 4, 33).at(-1)).toBeGreaterThan(5);
    hand.turnBy(0);
    expect(hand.isTurningOn()).toBe(false);
    const at = hand.leads()!.turnDeg;
    expect(follow(hand, 2, 33).at(-1)).toBeCloseTo(at, 6);
  });
});
