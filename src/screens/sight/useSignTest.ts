import { useEffect, useRef, useState } from 'react';

import type { SightTest, SightTests } from '../../contract/setup.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import {
  PRESS_TEST_START,
  pressTestAfter,
  TURN_TEST_START,
  turnTestAfter,
  type PressTest,
  type TurnTest,
} from '../../job/signTest.ts';
import type { Hearing } from '../state/useSettings.ts';
import { give } from '../sweep/giveSignal.ts';
import { words } from '../words/words.ts';

/** The trial that runs: first the press, then the turn. */
type Running =
  | { readonly name: 'up'; readonly test: PressTest }
  | { readonly name: 'turn'; readonly test: TurnTest };

type SignStep = 'settle' | 'press' | 'turn';

export interface SignTest {
  /** What the hand is to do now; null while nothing is tried. */
  readonly step: SignStep | null;
  readonly start: () => void;
  readonly stop: () => void;
}

/** Leads through press and turn; each outcome is told to `onTests` as soon as it is clear. */
export function useSignTest(
  progress: SweepProgress | null,
  tests: SightTests,
  { tones, voice }: Hearing,
  onTests: (tests: SightTests) => void,
): SignTest {
  const [running, setRunning] = useState<Running | null>(null);
  const latest = useRef({ running, tests, onTests });
  latest.current = { ...latest.current, tests, onTests };

  useEffect(() => {
    const { running: before, tests: known, onTests: tell } = latest.current;
    if (before === null || progress === null) return;
    const now = advanced(before, progress);
    const outcome = now.test.step === 'told' ? now.test.outcome : null;
    const next = outcome === null ? now : after(now.name);
    latest.current.running = next;
    setRunning(next);
    if (outcome === null) return;
    give({ tone: tones ? toneOf(outcome) : null, say: null });
    tell({ ...known, [now.name]: outcome });
  }, [progress, tones]);

  const step = running === null ? null : stepOf(running);
  useEffect(() => {
    if (step !== null && voice) give({ tone: null, say: words.sight.signSteps[step] });
  }, [step, voice]);

  const set = (next: Running | null) => {
    latest.current.running = next;
    setRunning(next);
  };
  return {
    step,
    start: () => set({ name: 'up', test: PRESS_TEST_START }),
    stop: () => set(null),
  };
}

function advanced(before: Running, progress: SweepProgress): Running {
  return before.name === 'up'
    ? { name: 'up', test: pressTestAfter(before.test, progress) }
    : { name: 'turn', test: turnTestAfter(before.test, progress) };
}

function after(name: Running['name']): Running | null {
  return name === 'up' ? { name: 'turn', test: TURN_TEST_START } : null;
}

function stepOf({ test }: Running): SignStep | null {
  return test.step === 'told' ? null : test.step;
}

const toneOf = (outcome: SightTest) => (outcome === 'confirmed' ? 'found' : 'lost');
