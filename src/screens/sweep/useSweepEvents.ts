import { useEffect, useRef, useState } from 'react';

import type { SweepProgress } from '../../contract/sweep.ts';
import { sweepEventBetween, type SweepEvent } from './sweepEvents.ts';
import { playTone } from './tones.ts';

/**
 * The last event of the sweep, to be shown; sounded as well unless the sound is off. A film that
 * is read once more (`pass` 2) starts again: what was told of it before no longer holds, and each
 * tone is heard only once.
 */
export function useSweepEvents(
  progress: SweepProgress | null,
  sound: boolean,
  pass: 1 | 2,
): SweepEvent | null {
  const before = useRef<{ progress: SweepProgress | null; pass: 1 | 2 }>({ progress: null, pass });
  const [last, setLast] = useState<SweepEvent | null>(null);
  useEffect(() => {
    const anew = before.current.pass !== pass;
    const event = sweepEventBetween(anew ? null : before.current.progress, progress);
    before.current = { progress, pass };
    if (anew) setLast(event);
    if (event === null) return;
    setLast(event);
    if (sound && pass === 1) playTone(event);
  }, [progress, sound, pass]);
  return last;
}
