import { formatShare } from '../words/numbers.ts';
import { sweepWords } from '../words/sweepWords.ts';

export function FilmProgress({ fraction }: { readonly fraction: number }) {
  return (
    <div className="film-progress">
      <span aria-hidden="true">
        {sweepWords.filmRead} {formatShare(fraction)}
      </span>
      <progress
        value={Math.min(Math.max(fraction, 0), 1)}
        max={1}
        aria-label={sweepWords.filmRead}
      />
    </div>
  );
}
