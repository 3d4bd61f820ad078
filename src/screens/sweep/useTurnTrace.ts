import { useEffect, useState } from 'react';

import type { SweepProgress } from '../../contract/sweep.ts';
import { EMPTY_TRACE, withReport, type TurnTrace } from './turnTrace.ts';

/** The trace of the sweep that runs; null reports begin it anew. */
export function useTurnTrace(progress: SweepProgress | null): TurnTrace {
  const [trace, setTrace] = useState(EMPTY_TRACE);
  useEffect(() => {
    setTrace((before) => (progress === null ? EMPTY_TRACE : withReport(before, progress)));
  }, [progress]);
  return trace;
}
