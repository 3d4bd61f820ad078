import { useEffect, useSyncExternalStore } from 'react';
import { useLocation } from 'wouter';

import type { KeptReading } from '../../session/readingKeeper.ts';
import { useApp } from './appContext.ts';
import { places } from './places.ts';

/** The latest reading and where it was kept. */
export function useKept(): KeptReading | null {
  const { keeper } = useApp();
  return useSyncExternalStore(
    (changed) => keeper.subscribe(changed),
    () => keeper.getKept(),
  );
}

/**
 * Brings the person to what happens: to the sweep when one starts, to its reading once that is in
 * the logbook (in place of the sweep, so that "back" leads to where it was started), and back when
 * a sweep ends without one. Otherwise people go where they like.
 */
export function useFollowSession(): void {
  const { session, keeper } = useApp();
  const [, goTo] = useLocation();
  useEffect(() => {
    const isAtSweep = () => location.hash === `#${places.sweep}`;
    let phase = session.getState().phase;
    const follow = () => {
      const before = phase;
      phase = session.getState().phase;
      if (phase === before) return;
      if (phase === 'sweeping' && !isAtSweep()) goTo(places.sweep);
      if (phase === 'choosing' && isAtSweep()) history.back();
    };
    const showReading = () => {
      const kept = keeper.getKept();
      const state = session.getState();
      // A practice reading goes back to where the wheel is.
      if (state.phase === 'read' && state.source === 'practice') {
        if (isAtSweep()) goTo(places.practice, { replace: true });
        return;
      }
      if (state.phase !== 'read' || kept?.result !== state.result || !isAtSweep()) return;
      if (!kept.kept.ok) return;
      const { wheelId, entryId } = kept.kept.value;
      // At the wheel a check sweep was made for its verdict; a film may be read for its figures.
      const isVerdict =
        state.source === 'camera' &&
        state.setup.after !== undefined &&
        state.result.reading.status === 'ok';
      const place = isVerdict ? places.proof : places.reading;
      goTo(place(wheelId, entryId), { replace: true });
    };
    const stops = [session.subscribe(follow), keeper.subscribe(showReading)];
    // What was kept before this page part was there.
    showReading();
    return () => stops.forEach((stop) => stop());
  }, [session, keeper, goTo]);
}
