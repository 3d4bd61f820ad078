import { FilmIcon } from '../parts/icons.tsx';
import { SweepFilesInput } from '../parts/SweepFilesInput.tsx';
import { words } from '../words/words.ts';

/** Takes film and setup file of a recorded sweep, by choice; they may also be dropped anywhere. */
export function FilmInput({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  return (
    <SweepFilesInput
      className="way way-small"
      role="sweep-files"
      label={`${words.shed.film}. ${words.shed.filmHelp}`}
      onFiles={onFiles}
    >
      <FilmIcon />
      <span className="way-name">{words.shed.film}</span>
      <span className="way-help">{words.shed.filmHelp}</span>
    </SweepFilesInput>
  );
}
