import type { ChangeEvent } from 'react';

import { FilmIcon } from '../parts/icons.tsx';
import { words } from '../words/words.ts';

/** Takes film and setup file of a recorded sweep, by choice; they may also be dropped anywhere. */
export function FilmInput({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const files = [...(input.files ?? [])];
    // Emptied, so that choosing the same files again is a change again.
    input.value = '';
    if (files.length > 0) onFiles(files);
  };
  return (
    <label className="way way-small">
      <input
        type="file"
        multiple
        accept="video/*,.json,application/json"
        data-role="sweep-files"
        className="unseen"
        aria-label={`${words.shed.film}. ${words.shed.filmHelp}`}
        onChange={choose}
      />
      <FilmIcon />
      <span className="way-name">{words.shed.film}</span>
      <span className="way-help">{words.shed.filmHelp}</span>
    </label>
  );
}
