import { useState, useSyncExternalStore } from 'react';

import type { AppUpdate } from '../../session/appUpdate.ts';
import { words } from '../words/words.ts';

/**
 * Offers a new version of the app once it is here. Never while a sweep runs: eyes and hands are at
 * the wheel then. Who says "later" is asked again when the app is next opened.
 */
export function UpdateOffer({
  update,
  sweeping,
}: {
  readonly update: AppUpdate;
  readonly sweeping: boolean;
}) {
  const waiting = useSyncExternalStore(
    (changed) => update.subscribe(changed),
    () => update.isWaiting(),
  );
  const [putOff, setPutOff] = useState(false);
  const [refused, setRefused] = useState<string | null>(null);
  if (!waiting || sweeping || putOff) return null;
  const use = async () => {
    const applied = await update.apply();
    if (applied.ok) return;
    const elsewhere = applied.failure.code === 'sweeping';
    setRefused(elsewhere ? words.update.sweepingElsewhere : words.update.failed);
  };
  return (
    <aside className="update-offer" data-role="update-offer">
      <p role="status">{refused ?? words.update.ready}</p>
      <button type="button" className="main" data-role="use-update" onClick={() => void use()}>
        {words.update.use}
      </button>
      <button type="button" className="plain" onClick={() => setPutOff(true)}>
        {words.update.later}
      </button>
    </aside>
  );
}
