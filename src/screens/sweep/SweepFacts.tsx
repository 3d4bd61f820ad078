import type { SweepProgress } from '../../contract/sweep.ts';
import { formatFigure, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { SpeedHint } from './SpeedHint.tsx';
import { steadinessOf } from './steadinessOf.ts';
import type { SweepEvent } from './sweepEvents.ts';

export interface SweepFactsProps {
  readonly progress: SweepProgress | null;
  readonly event: SweepEvent | null;
  readonly framesDropped: number;
  readonly units: Units;
  /** True where a hand turns a wheel: of a film there is no speed to be kept. */
  readonly isLive: boolean;
}

/** What stands beside the ring: what just happened, speed, how steady, whether the tape was seen. */
export function SweepFacts(props: SweepFactsProps) {
  const { progress, event, framesDropped, units, isLive } = props;
  const isSeen = progress !== null && progress.stage !== 'looking';
  const rockingMm = progress?.soFar?.rockingMm;
  return (
    <div className="sweep-facts" data-dropped={framesDropped}>
      {isLive && isSeen && (
        <SpeedHint turningDegPerS={progress.turningDegPerS} speed={progress.turnSpeed} />
      )}
      <ul>
        {event !== null && (
          <li key={event} className="sweep-event" data-event={event}>
            {words.sweep.events[event]}
          </li>
        )}
        {isSeen && rockingMm !== undefined && <Steady rockingMm={rockingMm} units={units} />}
        {isSeen && progress.edgeKind !== undefined && (
          <li data-following={progress.edgeKind}>{words.sweep.following[progress.edgeKind]}</li>
        )}
        {isSeen && <li>{progress.markSeen ? words.sweep.markSeen : words.sweep.markNotYet}</li>}
        {framesDropped > 0 && <li>{words.sweep.dropped(framesDropped)}</li>}
      </ul>
    </div>
  );
}

function Steady({ rockingMm, units }: { readonly rockingMm: number; readonly units: Units }) {
  const steadiness = steadinessOf(rockingMm);
  // Told to a tenth of a millimetre; the sign is left to the word "swing".
  const swing = formatFigure('length', rockingMm, units, 0.1).text.split('\u00a0±')[0]!;
  return (
    <li className="sweep-steady" data-steady={steadiness}>
      <strong>{words.sweep.steadiness[steadiness]}</strong>
      <span>{words.sweep.swing(swing)}</span>
    </li>
  );
}
