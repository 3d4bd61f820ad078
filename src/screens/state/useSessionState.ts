import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';

import type { Notice } from '../../contract/notice.ts';
import type { SessionState, SweepSession } from '../../contract/session.ts';
import { NO_STREAK, streakAfter, type NoticeStreak } from './refusalAdvice.ts';

export function useSessionState(session: SweepSession): SessionState {
  const subscribe = useCallback((onChange: () => void) => session.subscribe(onChange), [session]);
  const getState = useCallback(() => session.getState(), [session]);
  return useSyncExternalStore(subscribe, getState);
}

/** Counts the same trouble in a row, so that the advice can change. */
export function useNoticeStreak(state: SessionState): NoticeStreak {
  const [streak, setStreak] = useState(NO_STREAK);
  const outcome = outcomeOf(state);
  useEffect(() => {
    if (outcome === null) return;
    setStreak((before) => streakAfter(before, outcome === 'good' ? null : outcome.code));
  }, [outcome]);
  return streak;
}

function outcomeOf(state: SessionState): Notice | 'good' | null {
  if (state.phase === 'choosing') return state.problem;
  if (state.phase !== 'read') return null;
  const { reading } = state.result;
  return reading.status === 'ok' ? 'good' : (reading.refusals[0] ?? null);
}

export type LaserColour = 'green' | 'red';

/** The accent: the laser's colour as last found in a picture; green until then, the common one. */
export function useLaserColour(state: SessionState): LaserColour {
  const [colour, setColour] = useState<LaserColour>('green');
  const isLive = state.phase === 'sweeping' || state.phase === 'sighting';
  const seen = isLive ? (state.progress?.overlay?.laserColour ?? null) : null;
  if (seen !== null && seen !== colour) setColour(seen);
  return seen ?? colour;
}
