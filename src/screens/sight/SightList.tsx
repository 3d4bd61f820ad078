import { words } from '../words/words.ts';
import type { SightCheck } from './sightChecks.ts';

/** What is good and what is not yet, told by a tick or an open ring and in words. */
export function SightList({ checks }: { readonly checks: readonly SightCheck[] }) {
  return (
    <ul className="sight-list">
      {checks.map(({ name, isGood }) => (
        <li key={name} data-check={name} data-good={isGood}>
          <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false">
            {isGood ? <path d="M5 17 L13 25 L27 7" /> : <circle cx={16} cy={16} r={11} />}
          </svg>
          <span>{words.sight.checks[name]}</span>
          <span className="sight-state">{isGood ? words.sight.good : words.sight.notYet}</span>
        </li>
      ))}
    </ul>
  );
}
