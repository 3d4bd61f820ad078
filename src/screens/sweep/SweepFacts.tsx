import type { SweepProgress } from '../../contract/sweep.ts';
import { words } from '../words/words.ts';
import type { SweepEvent } from './sweepEvents.ts';

export interface SweepFactsProps {
  readonly progress: SweepProgress | null;
  readonly event: SweepEvent | null;
  readonly framesDropped: number;
}

/** The small facts beside the ring: what just happened, whether the tape was seen. */
export function SweepFacts({ progress, event, framesDropped }: SweepFactsProps) {
  return (
    <ul className="sweep-facts">
      {event !== null && (
        <li key={event} className="sweep-event" data-event={event}>
          {words.sweep.events[event]}
        </li>
      )}
      {progress !== null && progress.stage !== 'looking' && (
        <li>{progress.markSeen ? words.sweep.markSeen : words.sweep.markNotYet}</li>
      )}
      {framesDropped > 0 && <li>{words.sweep.dropped(framesDropped)}</li>}
    </ul>
  );
}
