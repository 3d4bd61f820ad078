import type { SightTest } from '../contract/setup.ts';
import type { SweepProgress } from '../contract/sweep.ts';

/**
 * Whether the picture shows the world as it is, tried by hand before a sweep: the rim is pressed
 * down at the sight, and the edge must be seen to go down there; the wheel is turned clockwise, and
 * must be seen to turn so. A picture on its head or mirrored turns one of them round.
 */

type Report = Pick<SweepProgress, 'timeS' | 'stage' | 'edgeHeightMm' | 'turnDeg' | 'markSeen'>;

export type PressTest =
  /** Waits for the wheel to stand still: the heights of the last seconds. */
  | { readonly step: 'settle'; readonly seen: readonly Height[] }
  /** Still: the rim may be pressed. */
  | { readonly step: 'press'; readonly restMm: number; readonly since: Departure | null }
  | { readonly step: 'told'; readonly outcome: SightTest };

interface Height {
  readonly timeS: number;
  readonly heightMm: number;
}

interface Departure {
  readonly timeS: number;
  readonly isDown: boolean;
}

export const PRESS_TEST_START: PressTest = { step: 'settle', seen: [] };

/**
 * Still is what has moved by no more than this for so long. A wheel that rocks once in 3 to 8 s with
 * an amplitude of more than 1.6 mm shows more than 1 mm in any 3 s, also about its turning point.
 */
const STILL_RANGE_MM = 1;
const STILL_S = 3;
/** Twice 1.6 mm is all that unseen rocking can still do; a light press moves the edge by about 7 mm. */
const PRESSED_MM = 4;
/** A press is held; a knock is not. */
const HELD_S = 0.4;

export function pressTestAfter(test: PressTest, report: Report): PressTest {
  const { timeS, stage, edgeHeightMm: heightMm } = report;
  if (test.step === 'told') return test;
  // Out of sight for a moment: what was seen before it still holds.
  if (stage !== 'following' || heightMm === null) return test;
  if (test.step === 'settle') return settled([...test.seen, { timeS, heightMm }]);
  const awayMm = heightMm - test.restMm;
  if (Math.abs(awayMm) < PRESSED_MM) return { ...test, since: null };
  const isDown = awayMm < 0;
  if (test.since === null || test.since.isDown !== isDown) {
    return { ...test, since: { timeS, isDown } };
  }
  if (timeS - test.since.timeS < HELD_S) return test;
  return { step: 'told', outcome: isDown ? 'confirmed' : 'reversed' };
}

function settled(all: readonly Height[]): PressTest {
  const nowS = all.at(-1)!.timeS;
  const isLongEnough = nowS - all[0]!.timeS >= STILL_S;
  const seen = all.filter(({ timeS }) => nowS - timeS <= STILL_S);
  const heights = seen.map(({ heightMm }) => heightMm);
  const rangeMm = Math.max(...heights) - Math.min(...heights);
  if (!isLongEnough || rangeMm > STILL_RANGE_MM) {
    // One older than the span is kept: it tells that the span has been seen in full.
    return { step: 'settle', seen: all.filter(({ timeS }) => nowS - timeS <= 2 * STILL_S) };
  }
  const restMm = heights.reduce((sum, height) => sum + height, 0) / heights.length;
  return { step: 'press', restMm, since: null };
}

export type TurnTest =
  | {
      readonly step: 'turn';
      readonly turnedDeg: number;
      readonly before: { readonly turnDeg: number; readonly markSeen: boolean } | null;
    }
  | { readonly step: 'told'; readonly outcome: SightTest };

export const TURN_TEST_START: TurnTest = { step: 'turn', turnedDeg: 0, before: null };

/** Further than a wheel swings to and fro by itself, degrees. */
const TURNED_DEG = 20;

export function turnTestAfter(test: TurnTest, report: Report): TurnTest {
  const { stage, turnDeg, markSeen } = report;
  if (test.step === 'told') return test;
  if (stage !== 'following' || turnDeg === null) return test;
  const { before } = test;
  // When the tape is found the turn is counted from it: that step is none of the wheel's.
  const stepDeg = before === null || before.markSeen !== markSeen ? 0 : turnDeg - before.turnDeg;
  const turnedDeg = test.turnedDeg + stepDeg;
  if (Math.abs(turnedDeg) < TURNED_DEG) {
    return { step: 'turn', turnedDeg, before: { turnDeg, markSeen } };
  }
  return { step: 'told', outcome: turnedDeg > 0 ? 'confirmed' : 'reversed' };
}
