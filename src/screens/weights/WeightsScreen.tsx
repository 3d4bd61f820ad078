import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';

import type { WheelArcRecord } from '../../contract/logbook.ts';
import { weightPlan, type PlanWishes } from '../../job/weightPlan.ts';
import { useApp } from '../shell/appContext.ts';
import { LogbookGap } from '../shell/LogbookGap.tsx';
import { places } from '../shell/places.ts';
import { useAcceptedSweep, type SweepParts } from '../shell/useAcceptedSweep.ts';
import { chosenWishes, keepWishes } from './chosenPlan.ts';
import { WeightsView } from './WeightsView.tsx';
import './rim.css';
import './weights.css';

export interface WeightsScreenProps {
  readonly wheelId: string;
  readonly entryId: string;
}

export default function WeightsScreen({ wheelId, entryId }: WeightsScreenProps) {
  const parts = useAcceptedSweep(wheelId, entryId);
  return parts?.ok ? <Weights parts={parts.value} /> : <LogbookGap answer={parts} />;
}

function Weights({ parts }: { readonly parts: SweepParts }) {
  const { wheel, stand, sweep } = parts;
  const { logbook, settings } = useApp();
  const [, goTo] = useLocation();
  const [wishes, setWishes] = useState(() => chosenWishes(parts));
  const plan = useMemo(
    () => weightPlan(sweep.reading, wheel, stand, wishes),
    [sweep, wheel, stand, wishes],
  );
  const wish = (next: PlanWishes) => {
    setWishes(next);
    keepWishes(sweep.id, next);
  };
  const block = (forbiddenArcs: readonly WheelArcRecord[]) =>
    void logbook.saveWheel({
      ...wheel,
      forbiddenArcs: [...forbiddenArcs],
      changedAt: new Date().toISOString(),
    });
  return (
    <WeightsView
      reading={sweep.reading}
      setup={sweep.setup}
      wheel={wheel}
      plan={plan}
      wishes={wishes}
      units={settings.units}
      onWishes={wish}
      onBlock={block}
      onLead={() => goTo(places.lead(wheel.id, sweep.id))}
      onStuck={async () => {
        if (!plan.ok) return;
        const added = await logbook.addEntry({
          id: crypto.randomUUID(),
          wheelId: wheel.id,
          at: new Date().toISOString(),
          kind: 'weights',
          added: [...plan.value.pieces],
        });
        if (added.ok) goTo(places.wheel(wheel.id));
      }}
    />
  );
}
