import type { ChangeEvent } from 'react';

import { CameraIcon, FilmIcon, WheelIcon } from '../parts/icons.tsx';
import { startWords } from '../words/startWords.ts';

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
    <nav className="choices" aria-label={startWords.choose}>
      <button type="button" className="choice" data-role="open-camera" onClick={onCamera}>
        <CameraIcon />
        <span className="choice-name">{startWords.camera}</span>
        <span className="choice-help">{startWords.cameraHelp}</span>
      </button>
      <label className="choice">
        <input
          type="file"
          multiple
          accept="video/*,.json,application/json"
          data-role="sweep-files"
          className="unseen"
          aria-label={`${startWords.film}. ${startWords.filmHelp}`}
          onChange={choose}
        />
        <FilmIcon />
        <span className="choice-name">{startWords.film}</span>
        <span className="choice-help">{startWords.filmHelp}</span>
      </label>
      <button type="button" className="choice" data-role="read-sample" onClick={onSample}>
        <WheelIcon />
        <span className="choice-name">{startWords.sample}</span>
        <span className="choice-help">{startWords.sampleHelp}</span>
      </button>
    </nav>
  );
}
