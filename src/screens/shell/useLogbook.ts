import { useEffect, useRef, useState } from 'react';

import type {
  Logbook,
  LogbookTrouble,
  LogEntry,
  StandRecord,
  WheelRecord,
} from '../../contract/logbook.ts';
import { failed, type Outcome } from '../../contract/outcome.ts';
import { useApp } from './appContext.ts';

/** What a screen asks of the logbook: null while it is fetched. */
export type Fetched<T> = Outcome<T, LogbookTrouble> | null;

/**
 * Asks again after every change, from whichever tab. `key` tells one question from another: with
 * a new key the old answer is not shown any more.
 */
export function useLogbookAnswer<T>(
  key: string,
  ask: (logbook: Logbook) => Promise<Outcome<T, LogbookTrouble>>,
): Fetched<T> {
  const { logbook } = useApp();
  const [answer, setAnswer] = useState<{ key: string; value: Fetched<T> } | null>(null);
  // Told apart by `key`: the function itself may be a new one each time.
  const asking = useRef(ask);
  asking.current = ask;
  useEffect(() => {
    let current = true;
    const fetch = () => {
      void asking
        .current(logbook)
        .catch(() => failed('storage-failed' as const))
        .then((value) => {
          if (current) setAnswer({ key, value });
        });
    };
    fetch();
    const stop = logbook.onChange(fetch);
    return () => {
      current = false;
      stop();
    };
  }, [logbook, key]);
  return answer?.key === key ? answer.value : null;
}

export const useWheels = (): Fetched<readonly WheelRecord[]> =>
  useLogbookAnswer('wheels', (logbook) => logbook.wheels());

export const useWheel = (wheelId: string): Fetched<WheelRecord> =>
  useLogbookAnswer(`wheel ${wheelId}`, (logbook) => logbook.wheel(wheelId));

export const useEntries = (wheelId: string): Fetched<readonly LogEntry[]> =>
  useLogbookAnswer(`entries ${wheelId}`, (logbook) => logbook.entriesOf(wheelId));

export const useStand = (): Fetched<StandRecord> =>
  useLogbookAnswer('stand', (logbook) => logbook.stand());
