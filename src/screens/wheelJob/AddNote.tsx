import { useId, useState } from 'react';

import { words } from '../words/words.ts';
import type { NewEntry } from './useWheelEntries.ts';

/** Longest note that the logbook takes. */
const LONGEST_NOTE = 4000;

export interface AddNoteProps {
  readonly onAdd: (entry: NewEntry) => void;
}

export function AddNote({ onAdd }: AddNoteProps) {
  const id = useId();
  const [text, setText] = useState('');
  const { job } = words;
  const keep = () => {
    onAdd({ kind: 'note', text: text.trim() });
    setText('');
  };
  return (
    <details className="drawer">
      <summary>{job.note}</summary>
      <div className="fields">
        <label htmlFor={id}>{job.noteHelp}</label>
        <textarea
          id={id}
          className="text-box"
          rows={3}
          maxLength={LONGEST_NOTE}
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <button type="button" className="main" disabled={text.trim() === ''} onClick={keep}>
          {job.addNote}
        </button>
      </div>
    </details>
  );
}
