import { useEffect, useRef } from 'react';

import { useApp } from '../shell/appContext.ts';
import { useWakeLock } from '../sight/useWakeLock.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { SweepScreen } from './SweepScreen.tsx';

/** The sweep that runs. Leaving the place ends it, as "stop" does. */
export function SweepPlace() {
  const { session } = useApp();
  const state = useSessionState(session);
  useWakeLock();
  const isHere = useRef(false);
  useEffect(() => {
    isHere.current = true;
    return () => {
      isHere.current = false;
      // React's strict mode takes a fresh place down and puts it up again at once: that is no leaving.
      queueMicrotask(() => {
        if (!isHere.current && session.getState().phase === 'sweeping') session.stop();
      });
    };
  }, [session]);
  return state.phase === 'sweeping' ? <SweepScreen state={state} /> : null;
}
