import { useId, useState } from 'react';

import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';

const LONGEST_NOTE = 4000;

export function NoteForm({ wheelId }: { readonly wheelId: string }) {
  const { logbook } = useApp();
  const [text, setText] = useState('');
  const id = useId();
  const add = async () => {
    const note = text.trim();
    if (note === '') return;
    const at = new Date().toISOString();
    const added = await logbook.addEntry({
      id: crypto.randomUUID(),
      wheelId,
      at,
      kind: 'note',
      text: note,
    });
    if (added.ok) setText('');
  };
  return (
    <form
      className="logbook-note"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <label htmlFor={id}>{words.logbook.note}</label>
      <textarea
        id={id}
        value={text}
        rows={3}
        maxLength={LONGEST_NOTE}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" className="plain" data-role="add-note">
        {words.logbook.addNote}
      </button>
    </form>
  );
}
