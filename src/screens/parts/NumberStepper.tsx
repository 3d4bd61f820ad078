import { useId, useState, type KeyboardEvent, type ReactNode } from 'react';

import {
  fieldText,
  formatKnown,
  parseTypedIn,
  steppedValue,
  unitName,
  type Quantity,
  type Units,
} from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { describedBy, FieldNotes } from './FieldNotes.tsx';
import { StepLine } from './StepLine.tsx';

export interface NumberStepperProps {
  readonly label: string;
  /** Name of the input, for forms and tests. */
  readonly name: string;
  readonly help?: string | undefined;
  readonly quantity: Quantity;
  readonly units: Units;
  /** Metric; null is an empty field. */
  readonly value: number | null;
  /** Lowest and highest value that is taken, metric. */
  readonly range: readonly [low: number, high: number];
  /** Where plus and minus start in an empty field, metric. */
  readonly proposal?: number;
  /** What one press changes, in the unit shown, where the usual step is too coarse. */
  readonly stepShown?: number | undefined;
  /** Called with a value inside the range, or with null when the field was emptied. */
  readonly onValue: (value: number | null) => void;
  /** What stands beside the field: how the value is known. */
  readonly children?: ReactNode;
}

/**
 * A number with a minus and a plus large enough for a glove; point and comma both do. What was
 * typed counts when the field is left; what cannot be right stays in the field and is said.
 */
export function NumberStepper(props: NumberStepperProps) {
  const { label, name, help, quantity, units, value, range, stepShown, onValue } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed ?? (value === null ? '' : fieldText(quantity, value, units));
  const problem = typed === null ? null : problemWith(typed, props);

  const settle = () => {
    if (typed === null) return;
    if (typed.trim() === '') {
      if (value !== null) onValue(null);
    } else {
      const next = parseTypedIn(quantity, typed, units);
      if (next === null || problem !== null) return;
      onValue(next);
    }
    setTyped(null);
  };
  const step = (direction: 1 | -1) => {
    const from = value ?? props.proposal ?? range[0];
    const next = value === null ? from : steppedValue(quantity, from, units, direction, stepShown);
    setTyped(null);
    onValue(Math.min(Math.max(next, range[0]), range[1]));
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Enter') {
      // Within a form it settles the field and does not send the form.
      event.preventDefault();
      settle();
    }
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault();
      step(event.key === 'ArrowUp' ? 1 : -1);
    }
  };
  const notes = { id, problem, help };
  return (
    <div className="stepper" data-problem={problem !== null}>
      <label htmlFor={id}>{label}</label>
      <StepLine
        label={label}
        isLeast={value !== null && value <= range[0]}
        isMost={value !== null && value >= range[1]}
        onStep={step}
        beside={props.children}
      >
        <span className="stepper-box">
          <input
            id={id}
            name={name}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={shown}
            aria-invalid={problem !== null}
            aria-describedby={describedBy(notes)}
            onChange={(event) => setTyped(event.currentTarget.value)}
            onFocus={(event) => event.currentTarget.select()}
            onBlur={settle}
            onKeyDown={onKey}
          />
          <span className="stepper-unit">{unitName(quantity, units)}</span>
        </span>
      </StepLine>
      <FieldNotes {...notes} />
    </div>
  );
}

/** What is wrong with a text, in words with the limit; null while it may still become right. */
function problemWith(
  typed: string,
  { quantity, units, range }: Pick<NumberStepperProps, 'quantity' | 'units' | 'range'>,
): string | null {
  if (typed.trim() === '') return null;
  const value = parseTypedIn(quantity, typed, units);
  if (value === null) return words.setup.notANumber;
  const [low, high] = range;
  if (value < low) return words.setup.tooSmall(formatKnown(quantity, low, units));
  if (value > high) return words.setup.tooLarge(formatKnown(quantity, high, units));
  return null;
}
