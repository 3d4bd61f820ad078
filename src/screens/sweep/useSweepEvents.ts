import { useEffect, useRef, useState } from 'react';

import type { SweepProgress } from '../../contract/sweep.ts';
import { beganAnew, sweepEventBetween, type SweepEvent } from './sweepEvents.ts';
import { playTone } from './tones.ts';

/** The last event of the sweep, to be shown; sounded as well unless the sound is off. */
export function useSweepEvents(progress: SweepProgress | null, sound: boolean): SweepEvent | null {
  const before = useRef<SweepProgress | null>(null);
  const [last, setLast] = useState<SweepEvent | null>(null);
  useEffect(() => {
    const anew = beganAnew(before.current, progress);
    if (anew) setLast(null);
    const event = sweepEventBetween(anew ? null : before.current, progress);
    before.current = progress;
    if (event === null) return;
    setLast(event);
    if (sound) playTone(event);
  }, [progress, sound]);
  return last;
}
