import { useId } from 'react';

import { MarkColourSchema, type MarkColour } from '../../contract/setup.ts';
import { setupWords } from '../words/setupWords.ts';

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
      <label htmlFor={id}>{setupWords.colour}</label>
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
            {setupWords.colours[one]}
          </option>
        ))}
      </select>
      <p id={`${id}-help`} className="field-help">
        {setupWords.colourHelp}
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
        {setupWords.label}
        <span className="field-optional"> ({setupWords.optional})</span>
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
        {setupWords.labelHelp}
      </p>
    </div>
  );
}
