import { useState } from 'react';
import { useLocation } from 'wouter';

import type { WheelRecord } from '../../contract/logbook.ts';
import { proposedWheel, wheelLike } from '../../job/proposals.ts';
import type { UndoOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { useWheels } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';

export interface ShedWheels {
  /** In the order in which they came in, so that a wheel keeps its place; null while fetched. */
  readonly inShed: readonly WheelRecord[] | null;
  readonly isTroubled: boolean;
  readonly offer: UndoOffer | null;
  /** A new wheel, like the last one touched; leads to its bench. */
  readonly add: () => void;
  readonly takeOut: (wheel: WheelRecord) => void;
}

export function useShedWheels(): ShedWheels {
  const { logbook } = useApp();
  const [, goTo] = useLocation();
  const wheels = useWheels();
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const [writeFailed, setWriteFailed] = useState(false);
  const all = wheels?.ok ? wheels.value : [];
  const inShed = all
    .filter(({ removedAt }) => removedAt === null)
    .toSorted((a, b) => a.createdAt.localeCompare(b.createdAt));

  const save = async (wheel: WheelRecord) => {
    const saved = await logbook.saveWheel(wheel);
    setWriteFailed(!saved.ok);
    return saved.ok;
  };
  const add = () => {
    const id = crypto.randomUUID();
    const label = words.shed.wheelName(all.length + 1);
    const now = new Date().toISOString();
    const [latest] = all;
    const wheel = latest ? wheelLike(latest, id, label, now) : proposedWheel(id, label, now);
    void save(wheel).then((saved) => {
      if (saved) goTo(places.bench(id));
    });
  };
  const takeOut = (wheel: WheelRecord) => {
    void save({ ...wheel, removedAt: new Date().toISOString() }).then((saved) => {
      if (!saved) return;
      setOffer({
        text: words.job.takenOut(wheel.label || words.reading.unnamed),
        undo: () => {
          setOffer(null);
          void save(wheel);
        },
      });
    });
  };
  return {
    inShed: wheels === null ? null : inShed,
    isTroubled: writeFailed || wheels?.ok === false,
    offer,
    add,
    takeOut,
  };
}
