import { useState } from 'react';

import type { LogEntry, WheelRecord } from '../../contract/logbook.ts';
import type { UndoOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';

/** What an entry has besides its head. */
export type NewEntry = LogEntry extends infer E
  ? E extends LogEntry
    ? Omit<E, 'id' | 'wheelId' | 'at'>
    : never
  : never;

export interface WheelEntries {
  readonly offer: UndoOffer | null;
  /** The last write did not succeed. */
  readonly isTroubled: boolean;
  readonly add: (entry: NewEntry) => void;
  /** Takes an entry back, and offers to undo that. `name` is what it is called on the screen. */
  readonly takeBack: (entry: LogEntry, name: string) => void;
  readonly bringBack: (wheel: WheelRecord) => void;
}

export function useWheelEntries(wheelId: string): WheelEntries {
  const { logbook } = useApp();
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const [isTroubled, setTroubled] = useState(false);

  const add = (entry: NewEntry) => {
    const head = { id: crypto.randomUUID(), wheelId, at: new Date().toISOString() };
    void logbook
      .addEntry({ ...entry, ...head } as LogEntry)
      .then((added) => setTroubled(!added.ok));
  };
  const takeBack = (entry: LogEntry, name: string) => {
    void logbook.removeEntry(entry.id).then((removed) => {
      setTroubled(!removed.ok);
      if (!removed.ok) return;
      setOffer({
        text: words.job.takenBack(name),
        undo: () => {
          setOffer(null);
          void logbook.addEntry(entry).then((added) => setTroubled(!added.ok));
        },
      });
    });
  };
  const bringBack = (wheel: WheelRecord) => {
    void logbook.saveWheel({ ...wheel, removedAt: null }).then((saved) => setTroubled(!saved.ok));
  };
  return { offer, isTroubled, add, takeBack, bringBack };
}
