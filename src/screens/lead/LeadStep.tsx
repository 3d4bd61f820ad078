import type { Weight } from '../../contract/reading.ts';
import type { SightingState } from '../../contract/session.ts';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';
import { LeadLive } from './LeadLive.tsx';
import { leadPlaceWords } from './leadWords.ts';
import { LeadWheel } from './LeadWheel.tsx';

export interface LeadStepProps {
  readonly weight: Weight;
  /** Null without a camera: the place is then shown to be found by hand. */
  readonly sighting: SightingState | null;
  readonly isOpening: boolean;
  /** "Weight 1 of 2" */
  readonly place: string;
  readonly onDone: () => void;
}

/** One weight: the way to its spot, then what to do there. */
export function LeadStep({ weight, sighting, isOpening, place, onDone }: LeadStepProps) {
  const { units } = useApp().settings;
  const done = (
    <button type="button" className="main" data-role="weight-done" onClick={onDone}>
      {words.lead.isDone}
    </button>
  );
  if (sighting !== null) {
    return (
      <LeadLive weight={weight} state={sighting} place={place}>
        {done}
      </LeadLive>
    );
  }
  return (
    <>
      <p className="instruction" role="status" data-lead="by-hand">
        {leadPlaceWords(weight, units)}
      </p>
      <LeadWheel weight={weight} turnDeg={null} />
      <p>{isOpening ? `${place} · ${words.lead.opening}` : place}</p>
      {done}
    </>
  );
}
