import { useLocation } from 'wouter';

import type { EyeEntry, LogEntry, WheelRecord } from '../../contract/logbook.ts';
import { eyePairs } from '../../job/eyePairs.ts';
import { wheelState } from '../../job/wheelState.ts';
import { UndoBar } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { LogbookGap } from '../shell/LogbookGap.tsx';
import { places } from '../shell/places.ts';
import { useEntries, useWheel } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';
import { EyeForm } from './EyeForm.tsx';
import { EyeHabitView } from './EyeHabitView.tsx';
import { EyeResult } from './EyeResult.tsx';
import { useKeptEye } from './useKeptEye.ts';
import './byEye.css';

export default function ByEyeScreen({ wheelId }: { readonly wheelId: string }) {
  const wheel = useWheel(wheelId);
  const entries = useEntries(wheelId);
  if (!wheel?.ok) return <LogbookGap answer={wheel} />;
  if (!entries?.ok) return <LogbookGap answer={entries} />;
  return <ByEye wheel={wheel.value} entries={entries.value} />;
}

interface ByEyeProps {
  readonly wheel: WheelRecord;
  readonly entries: readonly LogEntry[];
}

/** Enter what the eye saw; then the sweep's figures beside it, and how the eye does over time. */
function ByEye({ wheel, entries }: ByEyeProps) {
  const { settings } = useApp();
  const [, goTo] = useLocation();
  const { isEntering, begun, offer, isTroubled, keep, enterAnother } = useKeptEye();
  const state = wheelState(entries, wheel);
  // The present state of the wheel has been measured: the figures may have been seen.
  const isKnown = state.lastSweep !== null && state.addedSince.length === 0;
  const pairs = eyePairs(entries);
  const last = entries.filter((entry) => entry.kind === 'by-eye').at(-1) ?? null;
  const lastPair = last === null ? null : (pairs.find(({ eye }) => eye.id === last.id) ?? null);

  const entryOf = (lightSpotDeg: number, massG: number): EyeEntry => ({
    id: crypto.randomUUID(),
    wheelId: wheel.id,
    at: new Date().toISOString(),
    kind: 'by-eye',
    lightSpotDeg,
    massG,
    radiusMm: wheel.rings[0]!.radiusMm.value,
    blind: !isKnown,
  });
  if (isEntering) {
    return (
      <EyeForm
        wheel={wheel}
        known={isKnown}
        begun={begun}
        units={settings.units}
        onKeep={(lightSpotDeg, massG) => void keep(entryOf(lightSpotDeg, massG))}
      >
        {isTroubled && <p className="notice">{words.job.storageTrouble}</p>}
        <EyeHabitView pairs={pairs} units={settings.units} />
      </EyeForm>
    );
  }
  return (
    <EyeResult
      eye={last}
      pair={lastPair}
      wheel={wheel}
      units={settings.units}
      onAgain={enterAnother}
      onSweep={() => goTo(places.sight(wheel.id))}
    >
      {isTroubled && <p className="notice">{words.job.storageTrouble}</p>}
      <EyeHabitView pairs={pairs} units={settings.units} />
      <UndoBar offer={offer} />
    </EyeResult>
  );
}
