import type { Weight } from '../../contract/reading.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import type { LeadInstruction } from '../../job/leadInstruction.ts';
import { useApp } from '../shell/appContext.ts';
import { formatClockAndDeg, formatDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { LeadWheel } from './LeadWheel.tsx';
import { useLead } from './useLead.ts';

export interface LeadStepProps {
  readonly weight: Weight;
  /** False without a camera: the place is then shown to be found by hand. */
  readonly isLive: boolean;
  readonly isOpening: boolean;
  readonly progress: SweepProgress | null;
  /** "Weight 1 of 2" */
  readonly place: string;
  readonly onDone: () => void;
}

/** One weight: the way to its spot, then what to do there. */
export function LeadStep({ weight, isLive, isOpening, progress, place, onDone }: LeadStepProps) {
  const { units } = useApp().settings;
  const say = useLead(weight, progress);
  const turnDeg = isLive && progress?.markSeen ? progress.turnDeg : null;
  const line = isLive ? liveWords(say, weight, units) : byHandWords(weight, units);
  return (
    <>
      <p className="instruction" role="status" data-lead={isLive ? say.kind : 'by-hand'}>
        {isOpening && !isLive ? words.lead.opening : line}
      </p>
      {isLive && say.kind === 'turn' && (
        <p className="lead-figure" aria-hidden="true">
          <svg viewBox="-50 -50 100 100" transform={say.byDeg > 0 ? undefined : 'scale(-1 1)'}>
            <path d="M-34 0 A34 34 0 1 1 0 34 M0 34 l16 -12 M0 34 l14 14" />
          </svg>
          {formatDeg(Math.abs(say.byDeg))}
        </p>
      )}
      <LeadWheel weight={weight} turnDeg={turnDeg} />
      <p>
        {place} · {byHandWords(weight, units)}
      </p>
      <button type="button" className="main" data-role="weight-done" onClick={onDone}>
        {words.lead.isDone}
      </button>
    </>
  );
}

function liveWords(say: LeadInstruction, weight: Weight, units: Units): string {
  if (say.kind === 'find-tape') return words.lead.findTape;
  if (say.kind === 'lost') return words.lead.lost;
  if (say.kind === 'turn') return words.lead.turn(formatDeg(Math.abs(say.byDeg)), say.byDeg > 0);
  const mass = formatKnownMass(Math.abs(weight.massG), units);
  return weight.massG < 0 ? words.lead.takeOff(mass) : words.lead.stick(mass);
}

function byHandWords({ massG, angleDeg }: Weight, units: Units): string {
  const mass = formatKnownMass(Math.abs(massG), units);
  const where = formatClockAndDeg(angleDeg);
  return massG < 0 ? words.lead.takeOffAt(mass, where) : words.lead.stickAt(mass, where);
}
