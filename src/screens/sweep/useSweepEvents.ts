import { useEffect, useRef, useState } from 'react';

import type { SweepProgress } from '../../contract/sweep.ts';
import type { Hearing } from '../state/useSettings.ts';
import { give } from './giveSignal.ts';
import { signalOf } from './signals.ts';
import { isJustTold, sweepEventBetween, type SweepEvent } from './sweepEvents.ts';

/**
 * The last event of the sweep, to be shown; heard as well as far as the person wants it. A film
 * that is read once more (`pass` 2) starts again: what was told of it before no longer holds, and
 * each tone is heard only once.
 */
export function useSweepEvents(
  progress: SweepProgress | null,
  hearing: Hearing,
  pass: 1 | 2,
  isLive: boolean,
): SweepEvent | null {
  const { tones, voice } = hearing;
  const told = useRef<{ event: SweepEvent; atS: number } | null>(null);
  const before = useRef<{ progress: SweepProgress | null; pass: 1 | 2 }>({ progress: null, pass });
  const [last, setLast] = useState<SweepEvent | null>(null);
  useEffect(() => {
    const anew = before.current.pass !== pass;
    const event = sweepEventBetween(anew ? null : before.current.progress, progress, isLive);
    before.current = { progress, pass };
    if (anew) setLast(event);
    if (event === null || progress === null) return;
    setLast(event);
    if (isJustTold(event, progress.timeS, told.current)) return;
    told.current = { event, atS: progress.timeS };
    if (pass === 1) give(signalOf(event, { tones, voice }));
  }, [progress, tones, voice, pass, isLive]);
  return last;
}
