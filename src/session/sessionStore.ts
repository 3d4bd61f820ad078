import { createStore } from 'zustand/vanilla';

import { noticeFor, type Notice, type NoticeCode } from '../contract/notice.ts';
import type { SessionState } from '../contract/session.ts';

type Sweeping = Extract<SessionState, { phase: 'sweeping' }>;
type Sighting = Extract<SessionState, { phase: 'sighting' }>;
type Read = Extract<SessionState, { phase: 'read' }>;

/** One run of a sweep, from its start to its end or until another takes its place. */
export interface SweepRun {
  /** False once something else was started or this was stopped: it must then change nothing more. */
  isCurrent(): boolean;
  show(sweeping: Omit<Sweeping, 'phase'>): void;
  showSight(sighting: Omit<Sighting, 'phase'>): void;
  /** Changes what is shown of the running sweep; nothing while there is none. */
  update(part: Partial<Omit<Sweeping, 'phase'>>): void;
  updateSight(part: Partial<Omit<Sighting, 'phase'>>): void;
  showRead(read: Omit<Read, 'phase'>): void;
  /** Back to choosing, with what went wrong. */
  fail(code: NoticeCode, evidence?: Notice['evidence']): void;
}

export interface SessionStore {
  getState(): SessionState;
  subscribe(onChange: () => void): () => void;
  /** Makes void the run before and begins another. */
  begin(): SweepRun;
  /** Makes void the run before and goes back to choosing. */
  reset(): void;
}

/** Holds the state, and lets only the newest run change it. */
export function createSessionStore(): SessionStore {
  const store = createStore<{ state: SessionState }>(() => ({
    state: { phase: 'choosing', problem: null },
  }));
  const set = (state: SessionState) => store.setState({ state });
  let runNumber = 0;
  return {
    getState: () => store.getState().state,
    subscribe: (onChange) => store.subscribe(onChange),
    begin() {
      const mine = ++runNumber;
      const isCurrent = () => mine === runNumber;
      return {
        isCurrent,
        show(sweeping) {
          if (isCurrent()) set({ phase: 'sweeping', ...sweeping });
        },
        update(part) {
          const { state } = store.getState();
          if (isCurrent() && state.phase === 'sweeping') set({ ...state, ...part });
        },
        showSight(sighting) {
          if (isCurrent()) set({ phase: 'sighting', ...sighting });
        },
        updateSight(part) {
          const { state } = store.getState();
          if (isCurrent() && state.phase === 'sighting') set({ ...state, ...part });
        },
        showRead(read) {
          if (isCurrent()) set({ phase: 'read', ...read });
        },
        fail(code, evidence) {
          if (isCurrent()) set({ phase: 'choosing', problem: noticeFor(code, evidence) });
        },
      };
    },
    reset() {
      runNumber += 1;
      set({ phase: 'choosing', problem: null });
    },
  };
}
