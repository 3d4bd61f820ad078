import { useState } from 'react';

import type { StandRecord } from '../../contract/logbook.ts';
import type { UndoOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';

export interface StandEdit {
  readonly keep: (next: StandRecord) => void;
  /** Keeps it and offers the way back to how it was. */
  readonly keepWithUndo: (next: StandRecord, before: StandRecord, text: string) => void;
  readonly isTroubled: boolean;
  readonly offer: UndoOffer | null;
}

/** Every change of the stand is kept at once. */
export function useStandEdit(): StandEdit {
  const { logbook } = useApp();
  const [isTroubled, setTroubled] = useState(false);
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const keep = (next: StandRecord) => {
    void logbook.saveStand(next).then((saved) => setTroubled(!saved.ok));
  };
  const keepWithUndo = (next: StandRecord, before: StandRecord, text: string) => {
    keep(next);
    const undo = () => {
      setOffer(null);
      keep(before);
    };
    setOffer({ text, undo });
  };
  return { keep, keepWithUndo, isTroubled, offer };
}
