import { useEffect, useRef } from 'react';

import { useApp } from '../shell/appContext.ts';
import { useWakeLock } from '../sight/useWakeLock.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { SweepScreen } from './SweepScreen.tsx';

/** The sweep that runs. Leaving the place ends it, as "stop" does. */
export function SweepPlace() {
  const { session } = useApp();
  const state = useSessionState(session);
  const phase = useRef(state.phase);
  phase.current = state.phase;
  useWakeLock();
  useEffect(
    () => () => {
      if (phase.current === 'sweeping') session.stop();
    },
    [session],
  );
  return state.phase === 'sweeping' ? <SweepScreen state={state} /> : null;
}
