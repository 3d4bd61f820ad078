import { formatShare } from '../words/numbers.ts';

/** How much of some work is done, 0 to 1: as a bar and as a figure. */
export function ProgressLine({
  name,
  fraction,
}: {
  readonly name: string;
  readonly fraction: number;
}) {
  return (
    <div className="progress-line">
      <span aria-hidden="true">
        {name} {formatShare(fraction)}
      </span>
      <progress value={Math.min(Math.max(fraction, 0), 1)} max={1} aria-label={name} />
    </div>
  );
}
