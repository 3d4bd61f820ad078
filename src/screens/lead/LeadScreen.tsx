import { useState } from 'react';
import { Link } from 'wouter';

import type { SweepEntry, WeightsEntry } from '../../contract/logbook.ts';
import type { Weight } from '../../contract/reading.ts';
import { weightsByPlace } from '../../job/weightPlan.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { UndoBar } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { useAcceptedSweep } from '../shell/useAcceptedSweep.ts';
import { useStand } from '../shell/useLogbook.ts';
import { CameraExplained } from '../sight/CameraExplained.tsx';
import { useOpenSight, type SightWish } from '../sight/useOpenSight.ts';
import { useWakeLock } from '../sight/useWakeLock.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { chosenPlan } from '../weights/chosenPlan.ts';
import { words } from '../words/words.ts';
import { keepLeadPlace, leadPlace } from './leadPlace.ts';
import { LeadStep } from './LeadStep.tsx';
import './lead.css';

export interface LeadScreenProps {
  readonly wheelId: string;
  readonly entryId: string;
}

/** Leads the hand to the places of a reading's weights, then notes them. */
export default function LeadScreen({ wheelId, entryId }: LeadScreenProps) {
  const parts = useAcceptedSweep(wheelId, entryId);
  if (parts === null) return null;
  if (!parts.ok) return <p className="instruction">{words.lead.noReading}</p>;
  const plan = chosenPlan(parts.value);
  const weights = plan.ok ? weightsByPlace(plan.value) : [];
  if (weights.length === 0) {
    return (
      <div className="lead">
        <p className="instruction">{words.lead.nothing}</p>
        <Link className="plain" href={places.weights(wheelId, entryId)}>
          {words.lead.toWeights}
        </Link>
      </div>
    );
  }
  return <Leading wheelId={wheelId} sweep={parts.value.sweep} weights={weights} />;
}

interface LeadingProps {
  readonly wheelId: string;
  readonly sweep: SweepEntry;
  readonly weights: readonly Weight[];
}

function Leading({ wheelId, sweep, weights }: LeadingProps) {
  const { session, logbook, streak } = useApp();
  const state = useSessionState(session);
  const [at, setAt] = useState(() => leadPlace(sweep.id, weights));
  const [written, setWritten] = useState<WeightsEntry | 'failed' | null>(null);
  const { open, leave } = useOpenSight(useLeadWish(wheelId, sweep));
  useWakeLock();
  const write = async () => {
    const added: WeightsEntry = {
      id: crypto.randomUUID(),
      wheelId,
      at: new Date().toISOString(),
      kind: 'weights',
      added: weights.map((weight) => ({ ...weight })),
    };
    const kept = await logbook.addEntry(added);
    setWritten(kept.ok ? added : 'failed');
  };
  const goOnAt = (next: number) => {
    setAt(next);
    // Once all are on, the logbook has them.
    keepLeadPlace(sweep.id, weights, next % weights.length);
  };
  const next = () => {
    goOnAt(at + 1);
    if (at + 1 === weights.length) void write();
  };
  const takeBack = async (entry: WeightsEntry) => {
    const gone = await logbook.removeEntry(entry.id);
    if (!gone.ok) return;
    setWritten(null);
    goOnAt(0);
  };
  const weight = weights[at];
  if (weight === undefined) {
    return <LeadDone {...{ wheelId, written, write, takeBack }} />;
  }
  const problem = state.phase === 'choosing' ? state.problem : null;
  const sighting = state.phase === 'sighting' ? state : null;
  return (
    <div className={sighting === null ? 'lead' : undefined}>
      {sighting === null && <ScreenTitle className="unseen">{words.lead.title}</ScreenTitle>}
      {problem !== null && (
        <NoticePanel role="problem" notice={problem} streak={streak}>
          <button type="button" className="plain" data-role="open-sight" onClick={open}>
            {words.sight.startCamera}
          </button>
        </NoticePanel>
      )}
      {problem === null && leave.stage === 'explain' && (
        <CameraExplained onUnderstood={leave.understood} />
      )}
      <LeadStep
        key={at}
        weight={weight}
        sighting={sighting}
        isOpening={problem === null && leave.stage !== 'explain'}
        place={words.lead.step(at + 1, weights.length)}
        onDone={next}
      />
    </div>
  );
}

/** The camera as it stood for the sweep, without the sweep before it: nothing is read here. */
function useLeadWish(wheelId: string, sweep: SweepEntry): SightWish | null {
  const stand = useStand();
  if (!stand?.ok) return null;
  const { after: _, ...setup } = sweep.setup;
  const { deviceId, tested = null } = stand.value.camera;
  return { wheelId, setup, assumed: sweep.assumed, earlier: null, deviceId, tested };
}

interface LeadDoneProps {
  readonly wheelId: string;
  readonly written: WeightsEntry | 'failed' | null;
  readonly write: () => Promise<void>;
  readonly takeBack: (entry: WeightsEntry) => Promise<void>;
}

function LeadDone({ wheelId, written, write, takeBack }: LeadDoneProps) {
  if (written === 'failed') {
    return (
      <div className="lead">
        <p className="instruction" role="alert">
          {words.lead.notKept}
        </p>
        <button type="button" className="main" onClick={() => void write()}>
          {words.lead.tryAgain}
        </button>
      </div>
    );
  }
  if (written === null) return null;
  return (
    <div className="lead">
      <p className="instruction" role="status">
        {words.lead.allOn}
      </p>
      <Link className="plain" href={places.sight(wheelId)} data-role="prove">
        {words.lead.prove}
      </Link>
      <UndoBar offer={{ text: words.lead.noted, undo: () => void takeBack(written) }} />
    </div>
  );
}
