import { useId, useState } from 'react';

import { describedBy, FieldNotes } from './FieldNotes.tsx';

export interface TextFieldProps {
  readonly label: string;
  readonly name: string;
  readonly help?: string;
  readonly value: string;
  readonly maxLength: number;
  /** Called when the field is left or Enter is pressed, with a changed text. */
  readonly onText: (text: string) => void;
  readonly problem?: string | null;
  /** Proposed texts, offered by the browser. */
  readonly proposals?: readonly string[];
}

/** A line of text that counts when the field is left. */
export function TextField(props: TextFieldProps) {
  const { label, name, help, value, maxLength, onText, problem = null, proposals } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const settle = () => {
    if (typed !== null && typed.trim() !== value) onText(typed.trim());
    setTyped(null);
  };
  const notes = { id, problem, help };
  return (
    <div className="stepper" data-problem={problem !== null}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={name}
        className="text-box"
        type="text"
        autoComplete="off"
        maxLength={maxLength}
        list={proposals && `${id}-list`}
        value={typed ?? value}
        aria-invalid={problem !== null}
        aria-describedby={describedBy(notes)}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle();
        }}
      />
      {proposals && (
        <datalist id={`${id}-list`}>
          {proposals.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      )}
      <FieldNotes {...notes} />
    </div>
  );
}
