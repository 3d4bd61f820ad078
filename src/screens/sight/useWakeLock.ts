import { useEffect } from 'react';

/** Keeps the screen on while a hand is at the wheel; a browser that cannot is left as it is. */
export function useWakeLock(): void {
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
}
