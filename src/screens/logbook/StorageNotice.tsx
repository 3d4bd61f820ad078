import { useEffect, useState } from 'react';
import { Link } from 'wouter';

import { CautionIcon } from '../parts/icons.tsx';
import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';
import { storageTrouble, useStorage } from './useStorage.ts';

/** Over every screen while something is not as safely kept as it should be. */
export function StorageNotice() {
  const { logbook } = useApp();
  const state = useStorage();
  const [tries, setTries] = useState(0);
  const code = storageTrouble(state);
  useEffect(() => {
    if (state.heldCount === 0) return undefined;
    // What lives only in the page goes with it: the browser asks before it is closed.
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, [state.heldCount]);
  if (code === null) return null;
  const { cause, remedy, secondTime } = words.notices[code];
  return (
    <aside className="notice" role="status" data-role="storage-notice" data-code={code}>
      <CautionIcon />
      <div>
        <p className="notice-cause">{cause}</p>
        <p className="notice-remedy">{tries > 0 ? secondTime : remedy}</p>
        {state.trouble !== null && (
          <button
            type="button"
            className="plain"
            onClick={() => {
              setTries(tries + 1);
              void logbook.storage.retry();
            }}
          >
            {words.logbook.tryAgain}
          </button>
        )}{' '}
        <Link className="plain" href={places.logbook}>
          {words.logbook.toLogbook}
        </Link>
      </div>
    </aside>
  );
}
