import { useState } from 'react';

import type { EyeEntry } from '../../contract/logbook.ts';
import type { UndoOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';

/** What the eye said: where the wheel is light, and the weight that it wants there. */
export type EyeValues = Pick<EyeEntry, 'lightSpotDeg' | 'massG'>;

export interface KeptEye {
  /** True while a reading is being entered, false once it is kept. */
  readonly isEntering: boolean;
  /** What the form begins with: a reading that was undone; null for a fresh one. */
  readonly begun: EyeValues | null;
  readonly offer: UndoOffer | null;
  /** The last write did not succeed. */
  readonly isTroubled: boolean;
  readonly keep: (entry: EyeEntry) => Promise<void>;
  readonly enterAnother: () => void;
}

/** Keeps a reading by eye. Undone it is taken back, and stands in the form again to be mended. */
export function useKeptEye(): KeptEye {
  const { logbook } = useApp();
  const [isEntering, setEntering] = useState(true);
  const [begun, setBegun] = useState<EyeValues | null>(null);
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const [isTroubled, setTroubled] = useState(false);

  const undo = async (entry: EyeEntry) => {
    const removed = await logbook.removeEntry(entry.id);
    setTroubled(!removed.ok);
    if (!removed.ok) return;
    setOffer(null);
    setBegun(entry);
    setEntering(true);
  };
  const keep = async (entry: EyeEntry) => {
    const added = await logbook.addEntry(entry);
    setTroubled(!added.ok);
    if (!added.ok) return;
    setOffer({ text: words.byEye.kept, undo: () => void undo(entry) });
    setEntering(false);
  };
  const enterAnother = () => {
    setOffer(null);
    setBegun(null);
    setEntering(true);
  };
  return { isEntering, begun, offer, isTroubled, keep, enterAnother };
}
