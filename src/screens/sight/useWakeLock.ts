import { useEffect, useState } from 'react';

export interface WakeLock {
  /** True when the screen goes dark by itself: the browser cannot keep it on, or will not, as on a low battery. */
  readonly mayGoDark: boolean;
}

/** Keeps the screen on while a hand is at the wheel; where that cannot be it is told. */
export function useWakeLock(): WakeLock {
  const [mayGoDark, setMayGoDark] = useState(() => !('wakeLock' in navigator));
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let isAsking = false;
    let isOver = false;
    const take = async () => {
      const isHeld = lock !== null && !lock.released;
      if (document.hidden || isOver || isAsking || isHeld || !('wakeLock' in navigator)) return;
      isAsking = true;
      lock = await navigator.wakeLock.request('screen').catch(() => null);
      isAsking = false;
      if (isOver) void lock?.release();
      else if (!document.hidden) setMayGoDark(lock === null);
    };
    // A page that was hidden has lost its lock.
    const onVisible = () => void take();
    document.addEventListener('visibilitychange', onVisible);
    void take();
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', onVisible);
      void lock?.release();
    };
  }, []);
  return { mayGoDark };
}
