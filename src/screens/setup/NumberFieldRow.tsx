import { useId, useState } from 'react';

import { fieldText, parseTyped, parseTypedIn, unitName, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { NumberField } from './setupFields.ts';

export interface NumberFieldRowProps {
  readonly field: NumberField;
  readonly units: Units;
  /** Metric, as typed or as proposed. */
  readonly text: string;
  readonly known: boolean;
  readonly problem: string | null;
  readonly onText: (text: string) => void;
  readonly onKnown: (known: boolean) => void;
}

/** One number with its unit, what it is, and whether it is known or only assumed. */
export function NumberFieldRow(props: NumberFieldRowProps) {
  const { field, units, text, known, problem, onText, onKnown } = props;
  const { quantity } = field;
  // What is being typed stays as it is typed; what is kept is metric.
  const [typed, setTyped] = useState<string | null>(null);
  const kept = units === 'metric' ? null : parseTyped(text);
  const shown = typed ?? (kept === null ? text : fieldText(quantity, kept, units));
  const type = (next: string) => {
    setTyped(next);
    const value = units === 'metric' ? null : parseTypedIn(quantity, next, units);
    onText(value === null ? next : String(value));
  };
  const id = useId();
  const filled = text.trim() !== '';
  return (
    <div className="field" data-problem={problem !== null}>
      <label htmlFor={id}>
        {field.name}
        {field.optional && <span className="field-optional"> ({words.setup.optional})</span>}
      </label>
      <div className="field-line">
        <span className="field-box">
          <input
            id={id}
            name={field.path}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={shown}
            required={!field.optional}
            aria-invalid={problem !== null}
            aria-describedby={`${id}-help${problem === null ? '' : ` ${id}-problem`}`}
            onChange={(event) => type(event.currentTarget.value)}
            onBlur={() => setTyped(null)}
          />
          <span className="field-unit">{unitName(quantity, units)}</span>
        </span>
        {filled && (
          <button
            type="button"
            className="field-mark"
            aria-pressed={known}
            aria-label={
              known ? words.setup.markAssumed(field.name) : words.setup.markKnown(field.name)
            }
            onClick={() => onKnown(!known)}
          >
            {known ? words.setup.known : words.setup.assumed}
          </button>
        )}
      </div>
      {problem !== null && (
        <p id={`${id}-problem`} className="field-problem">
          {problem}
        </p>
      )}
      <p id={`${id}-help`} className="field-help">
        {field.help}
      </p>
    </div>
  );
}
