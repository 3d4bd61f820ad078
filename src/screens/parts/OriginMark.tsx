import type { Origin } from '../../contract/logbook.ts';
import { words } from '../words/words.ts';

export interface OriginMarkProps {
  readonly origin: Origin;
  /** What the value is called, for the reader of the button; without `onOrigin` it is only shown. */
  readonly name: string;
  readonly onOrigin?: (origin: Origin) => void;
}

/**
 * How a value came to be known: full disc measured, half disc entered, broken ring assumed. A press
 * vouches for an assumed value, or takes that back.
 */
export function OriginMark({ origin, name, onOrigin }: OriginMarkProps) {
  const word = words.common.origins[origin];
  const sign = (
    <>
      <OriginSign origin={origin} />
      <span>{word}</span>
    </>
  );
  if (onOrigin === undefined) return <span className={`origin origin-${origin}`}>{sign}</span>;
  const next = origin === 'assumed' ? 'entered' : 'assumed';
  return (
    <button
      type="button"
      className={`origin origin-${origin}`}
      aria-label={`${name}: ${word}. ${words.common.originPress[next]}`}
      onClick={() => onOrigin(next)}
    >
      {sign}
    </button>
  );
}

/** The shape alone. */
function OriginSign({ origin }: { readonly origin: Origin }) {
  return (
    <svg className="origin-sign" viewBox="-12 -12 24 24" aria-hidden="true" focusable="false">
      <circle r={9} className={origin === 'assumed' ? 'origin-broken' : 'origin-ring'} />
      {origin === 'entered' && <path className="origin-fill" d="M-9 0 A9 9 0 0 0 9 0 Z" />}
      {origin === 'measured' && <circle className="origin-fill" r={9} />}
    </svg>
  );
}
