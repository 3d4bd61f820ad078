import { ProgressLine } from '../parts/ProgressLine.tsx';
import { words } from '../words/words.ts';

export interface FilmProgressProps {
  readonly fraction: number;
  /** 2 while the film is read again with a better view; the bar then starts again. */
  readonly pass: 1 | 2;
}

export function FilmProgress({ fraction, pass }: FilmProgressProps) {
  const name = pass === 2 ? words.sweep.filmReadAgain : words.sweep.filmRead;
  return <ProgressLine name={name} fraction={fraction} />;
}
