import { words } from '../words/words.ts';
import type { SightCheck } from './sightChecks.ts';

const STATE_WORDS = {
  good: () => words.sight.good,
  'not-yet': () => words.sight.notYet,
  'not-tried': () => words.sight.notTried,
} as const;

/** What is good and what is not yet, told by a sign and in words, with what to do about it. */
export function SightList({ checks }: { readonly checks: readonly SightCheck[] }) {
  return (
    <ul className="sight-list">
      {checks.map(({ name, state, todo }) => (
        <li key={name} data-check={name} data-state={state}>
          <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false">
            {state === 'good' ? (
              <path d="M5 17 L13 25 L27 7" />
            ) : (
              <circle cx={16} cy={16} r={11} strokeDasharray={state === 'not-tried' ? '4 5' : ''} />
            )}
          </svg>
          <span>
            {words.sight.checks[name]} <span className="sight-state">{STATE_WORDS[state]()}</span>
          </span>
          {todo !== null && <span className="sight-todo">{todo}</span>}
        </li>
      ))}
    </ul>
  );
}
