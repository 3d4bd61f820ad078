import { useState } from 'react';

import type { WheelRecord } from '../../contract/logbook.ts';
import type { BalanceOutcome } from '../../balance/failures.ts';
import type { UndoOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';

export interface WheelEdit {
  /** Keeps the wheel at once: there is no "save" to forget. */
  readonly keep: (next: WheelRecord) => void;
  /** Keeps it where the physics allows; else it is said that the wheel would not stand. */
  readonly keepIfItStands: (next: BalanceOutcome<WheelRecord>) => void;
  /** Keeps it and offers the way back to how it was. */
  readonly keepWithUndo: (next: WheelRecord, before: WheelRecord, text: string) => void;
  readonly isTroubled: boolean;
  readonly refusal: string | null;
  readonly offer: UndoOffer | null;
}

export function useWheelEdit(): WheelEdit {
  const { logbook } = useApp();
  const [isTroubled, setTroubled] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const keep = (next: WheelRecord) => {
    setRefusal(null);
    void logbook
      .saveWheel({ ...next, changedAt: new Date().toISOString() })
      .then((saved) => setTroubled(!saved.ok));
  };
  return {
    keep,
    keepIfItStands(next) {
      if (next.ok) keep(next.value);
      else setRefusal(words.bench.cannotStand);
    },
    keepWithUndo(next, before, text) {
      keep(next);
      const undo = () => {
        setOffer(null);
        keep(before);
      };
      setOffer({ text, undo });
    },
    isTroubled,
    refusal,
    offer,
  };
}
