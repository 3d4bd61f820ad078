import { useEffect } from 'react';

/** Keeps the screen on while a hand is at the wheel; a browser that cannot is left as it is. */
export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let isOver = false;
    const take = async () => {
      if (document.hidden || isOver || !('wakeLock' in navigator)) return;
      const taken = await navigator.wakeLock.request('screen').catch(() => null);
      if (isOver) void taken?.release();
      else lock = taken;
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
