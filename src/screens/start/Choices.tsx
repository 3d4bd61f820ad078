import type { ChangeEvent } from 'react';

import { CameraIcon, FilmIcon, WheelIcon } from '../parts/icons.tsx';
import { words } from '../words/words.ts';

export interface ChoicesProps {
  readonly onSample: () => void;
  readonly onFiles: (files: readonly File[]) => void;
  readonly onCamera: () => void;
}

/** The three ways to a reading, each one touch. */
export function Choices({ onSample, onFiles, onCamera }: ChoicesProps) {
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const files = [...(input.files ?? [])];
    // Emptied, so that choosing the same files again is a change again.
    input.value = '';
    if (files.length > 0) onFiles(files);
  };
  return (
    <nav className="choices" aria-label={words.start.choose}>
      <button type="button" className="choice" data-role="open-camera" onClick={onCamera}>
        <CameraIcon />
        <span className="choice-name">{words.start.camera}</span>
        <span className="choice-help">{words.start.cameraHelp}</span>
      </button>
      <label className="choice">
        <input
          type="file"
          multiple
          accept="video/*,.json,application/json"
          data-role="sweep-files"
          className="unseen"
          aria-label={`${words.start.film}. ${words.start.filmHelp}`}
          onChange={choose}
        />
        <FilmIcon />
        <span className="choice-name">{words.start.film}</span>
        <span className="choice-help">{words.start.filmHelp}</span>
      </label>
      <button type="button" className="choice" data-role="read-sample" onClick={onSample}>
        <WheelIcon />
        <span className="choice-name">{words.start.sample}</span>
        <span className="choice-help">{words.start.sampleHelp}</span>
      </button>
    </nav>
  );
}
