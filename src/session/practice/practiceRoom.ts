import { createStore } from 'zustand/vanilla';

import type { EyeReading } from '../../balance/byEye.ts';
import type { Weight } from '../../contract/reading.ts';
import type { SweepResult } from '../../contract/sweep.ts';
import { createPracticeStand, type Difficulty, type PracticeStand } from './practiceStand.ts';

/** One practice wheel and what has been done with it. */
export interface PracticeState {
  readonly stand: PracticeStand;
  /** The guess by eye, once it is made. */
  readonly guess: EyeReading | null;
  /** Every sweep of this wheel, oldest first. */
  readonly sweeps: readonly PracticeSweep[];
  readonly weights: readonly Weight[];
  readonly truthShown: boolean;
}

export interface PracticeSweep {
  readonly result: SweepResult;
  /** The weights that were on the wheel when it was read. */
  readonly withWeights: readonly Weight[];
}

export interface PracticeRoom {
  getState(): PracticeState;
  subscribe(onChange: () => void): () => void;
  /** Puts another wheel on the ball. */
  open(choice: { readonly seed: number; readonly difficulty: Difficulty }): void;
  guess(guess: EyeReading): void;
  /** Takes a sweep's result in; the same one twice counts once. */
  keep(result: SweepResult): void;
  stick(weights: readonly Weight[]): void;
  takeOff(index: number): void;
  showTruth(): void;
}

let room: PracticeRoom | null = null;

/** The one practice room of the page: it stays as it is while the sweep's own screen is open. */
export function practiceRoom(): PracticeRoom {
  room ??= createPracticeRoom({ seed: 1, difficulty: 'clean' });
  return room;
}

function createPracticeRoom(first: { seed: number; difficulty: Difficulty }): PracticeRoom {
  const fresh = (choice: typeof first): PracticeState => ({
    stand: createPracticeStand(choice),
    guess: null,
    sweeps: [],
    weights: [],
    truthShown: false,
  });
  const store = createStore<PracticeState>(() => fresh(first));
  const { getState, setState } = store;
  return {
    getState,
    subscribe: store.subscribe,
    open(choice) {
      getState().stand.dispose();
      setState(fresh(choice));
    },
    guess: (guess) => setState({ guess }),
    keep(result) {
      const { stand, sweeps, weights } = getState();
      // The sweep has what it needs: the hand stops turning.
      stand.release();
      if (sweeps.some((sweep) => sweep.result === result)) return;
      setState({ sweeps: [...sweeps, { result, withWeights: weights }] });
    },
    stick(weights) {
      const { stand } = getState();
      for (const { massG, angleDeg } of weights) stand.addWeight(massG, angleDeg);
      setState({ weights: stand.weights() });
    },
    takeOff(index) {
      const { stand } = getState();
      stand.removeWeight(index);
      setState({ weights: stand.weights() });
    },
    showTruth: () => setState({ truthShown: true }),
  };
}
