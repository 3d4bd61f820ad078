import type { AddedWeight } from '../../contract/setup.ts';
import { SweepFilesInput } from '../parts/SweepFilesInput.tsx';
import { WeightForm } from '../parts/WeightForm.tsx';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface AfterFieldsProps {
  readonly added: readonly AddedWeight[];
  /** Name of the earlier sweep's reading; null until it is chosen. */
  readonly earlier: string | null;
  readonly problem: string | null;
  /** What the form says of the wheel: where weights sit, and the smallest one. */
  readonly weightRadiusMm: number;
  readonly weightStepG: number;
  readonly units: Units;
  readonly onAdded: (added: readonly AddedWeight[]) => void;
  readonly onEarlier: (files: readonly File[]) => void;
}

/** For a film of a check sweep: what went on the wheel since the sweep before it, and its reading. */
export function AfterFields(props: AfterFieldsProps) {
  const { added, earlier, problem, weightRadiusMm, weightStepG, units, onAdded, onEarlier } = props;
  const { after } = words.setup;
  return (
    <details className="drawer" open={added.length > 0 || problem !== null}>
      <summary>{after.title}</summary>
      <div className="fields">
        <p>{after.help}</p>
        <ul className="after-list" aria-label={after.title}>
          {added.map((one, index) => (
            <li key={`${index} ${one.angleDeg}`}>
              <span>{weightText(one, units)}</span>
              <button
                type="button"
                className="plain"
                aria-label={after.remove(weightText(one, units))}
                onClick={() => onAdded(added.filter((_, other) => other !== index))}
              >
                <span aria-hidden="true">×</span>
              </button>
            </li>
          ))}
        </ul>
        {/* Drawn anew with another radius or step: what stands in it at first follows them. */}
        <WeightForm
          key={`${weightRadiusMm} ${weightStepG}`}
          radiiMm={[weightRadiusMm]}
          massG={weightStepG}
          angleDeg={0}
          units={units}
          onAdd={(one) => onAdded([...added, one])}
        />
        <SweepFilesInput
          className="plain file-button after-earlier"
          role="earlier-reading"
          accept=".json,application/json"
          label={after.choose}
          onFiles={onEarlier}
        >
          <span aria-hidden="true">{after.choose}</span>
        </SweepFilesInput>
        <p role="status">
          {problem ?? (earlier === null ? after.noEarlier : after.earlier(earlier))}
        </p>
      </div>
    </details>
  );
}

function weightText({ massG, angleDeg }: AddedWeight, units: Units): string {
  const { putOn, takenOff } = words.job;
  const mass = formatKnownMass(Math.abs(massG), units);
  return `${massG < 0 ? takenOff : putOn}: ${mass} · ${formatClockAndDeg(angleDeg)}`;
}
