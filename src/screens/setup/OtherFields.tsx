import { useId } from 'react';

import {
  MarkColourSchema,
  TurnSenseSchema,
  type MarkColour,
  type TurnSense,
} from '../../contract/setup.ts';
import { words } from '../words/words.ts';

/** Longest label that the setup file takes. */
const LONGEST_LABEL = 200;

export function ColourField({
  colour,
  onColour,
}: {
  readonly colour: MarkColour;
  readonly onColour: (colour: MarkColour) => void;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words.setup.colour}</label>
      <select
        id={id}
        name="sight.valveMark.colour"
        value={colour}
        aria-describedby={`${id}-help`}
        onChange={(event) => {
          const chosen = MarkColourSchema.options.find((one) => one === event.currentTarget.value);
          if (chosen !== undefined) onColour(chosen);
        }}
      >
        {MarkColourSchema.options.map((one) => (
          <option key={one} value={one}>
            {words.setup.colours[one]}
          </option>
        ))}
      </select>
      <p id={`${id}-help`} className="field-help">
        {words.setup.colourHelp}
      </p>
    </div>
  );
}

export function SenseField({
  sense,
  onSense,
}: {
  readonly sense: TurnSense | null;
  readonly onSense: (sense: TurnSense | null) => void;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>
        {words.setup.sense}
        <span className="field-optional"> ({words.setup.optional})</span>
      </label>
      <select
        id={id}
        name="turnSense"
        value={sense ?? 'unsaid'}
        aria-describedby={`${id}-help`}
        onChange={(event) =>
          onSense(TurnSenseSchema.options.find((one) => one === event.currentTarget.value) ?? null)
        }
      >
        {(['unsaid', ...TurnSenseSchema.options] as const).map((one) => (
          <option key={one} value={one}>
            {words.setup.senses[one]}
          </option>
        ))}
      </select>
      <p id={`${id}-help`} className="field-help">
        {words.setup.senseHelp}
      </p>
    </div>
  );
}

export function LabelField({
  label,
  onLabel,
}: {
  readonly label: string;
  readonly onLabel: (label: string) => void;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>
        {words.setup.label}
        <span className="field-optional"> ({words.setup.optional})</span>
      </label>
      <input
        id={id}
        name="label"
        type="text"
        autoComplete="off"
        maxLength={LONGEST_LABEL}
        value={label}
        aria-describedby={`${id}-help`}
        onChange={(event) => onLabel(event.currentTarget.value)}
      />
      <p id={`${id}-help`} className="field-help">
        {words.setup.labelHelp}
      </p>
    </div>
  );
}
