import type { WheelRecord } from '../../contract/logbook.ts';
import { WeightForm } from '../parts/WeightForm.tsx';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { NewEntry } from './useWheelEntries.ts';

export interface HandWeightsProps {
  readonly wheel: WheelRecord;
  readonly units: Units;
  readonly onAdd: (entry: NewEntry) => void;
}

/** A weight that went on or came off without being led: the next sweep has to know of it. */
export function HandWeights({ wheel, units, onAdd }: HandWeightsProps) {
  return (
    <details className="drawer">
      <summary>{words.job.handWeights}</summary>
      <div className="fields">
        <p>{words.job.handWeightsHelp}</p>
        <WeightForm
          radiiMm={wheel.rings.map(({ radiusMm }) => radiusMm.value)}
          massG={wheel.weightStepG}
          angleDeg={wheel.lastReading?.lightSpotDeg ?? 0}
          units={units}
          onAdd={(added) => onAdd({ kind: 'weights', added: [added] })}
        />
      </div>
    </details>
  );
}
