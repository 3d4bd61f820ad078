import { useState } from 'react';
import { Link } from 'wouter';

import type { LogEntry, WheelRecord } from '../../contract/logbook.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { UndoBar, type UndoOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { useEntries, useWheel } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';
import { NoteForm } from './NoteForm.tsx';
import { SeasonDrawing } from './SeasonDrawing.tsx';
import { TimelineEntry } from './TimelineEntry.tsx';
import { useShelf } from './useShelf.ts';
import { WheelSheet } from './WheelSheet.tsx';
import './logbook.css';
import './sheet.css';

export interface LoggedWheelScreenProps {
  readonly wheelId: string;
}

/** All that was ever done to one wheel, newest first. */
export default function LoggedWheelScreen({ wheelId }: LoggedWheelScreenProps) {
  const wheel = useWheel(wheelId);
  const entries = useEntries(wheelId);
  if (wheel === null || entries === null) return <div aria-busy="true" />;
  if (!wheel.ok) {
    return (
      <div className="logbook">
        <ScreenTitle>{words.logbook.notFound}</ScreenTitle>
      </div>
    );
  }
  return <LoggedWheel wheel={wheel.value} entries={entries.ok ? entries.value : []} />;
}

function LoggedWheel({
  wheel,
  entries,
}: {
  readonly wheel: WheelRecord;
  readonly entries: readonly LogEntry[];
}) {
  const { logbook, settings } = useApp();
  const films = useShelf('films');
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const log = words.logbook;
  const remove = async (entry: LogEntry) => {
    const removed = await logbook.removeEntry(entry.id);
    if (!removed.ok) return;
    const undo = () => {
      setOffer(null);
      void logbook.addEntry(entry);
    };
    setOffer({ text: log.entryDeleted, undo });
  };
  return (
    <div className="logbook">
      <div className="screen-only logbook">
        <ScreenTitle>{wheel.label || log.unnamed}</ScreenTitle>
        <p>{[wheel.place, wheel.tyre, log.stages[wheel.stage]].filter(Boolean).join(' · ')}</p>
        <div className="logbook-buttons">
          <Link className="plain" href={places.wheel(wheel.id)}>
            {log.toWheel}
          </Link>
          <button type="button" className="plain" onClick={() => print()}>
            {log.print}
          </button>
        </div>
        <SeasonDrawing entries={entries} units={settings.units} />
        <section>
          <h2>{log.entries}</h2>
          {entries.length === 0 && <p>{log.noEntries}</p>}
          <ol className="logbook-list" data-role="timeline">
            {entries.toReversed().map((entry) => (
              <TimelineEntry
                key={entry.id}
                entry={entry}
                units={settings.units}
                film={films.find(({ id }) => entry.kind === 'sweep' && id === entry.filmId) ?? null}
                onRemove={() => void remove(entry)}
              />
            ))}
          </ol>
        </section>
        <UndoBar offer={offer} />
        <NoteForm wheelId={wheel.id} />
      </div>
      <WheelSheet wheel={wheel} entries={entries} units={settings.units} />
    </div>
  );
}
