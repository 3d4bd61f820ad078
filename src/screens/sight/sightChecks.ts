import type { SightTests } from '../../contract/setup.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import { words } from '../words/words.ts';

const SEEN = ['picture', 'light', 'line', 'edge'] as const;
const TRIED = ['up', 'turn'] as const;
type SeenName = (typeof SEEN)[number];
type SightCheckName = SeenName | (typeof TRIED)[number];

export interface SightCheck {
  readonly name: SightCheckName;
  /** `not-tried` stands in no one's way: a sweep may begin without it. */
  readonly state: 'good' | 'not-yet' | 'not-tried';
  /** What to do about it; of what is not seen only of the first, since the rest hang on it. */
  readonly todo: string | null;
}

/** What must be seen before a sweep, in the order in which one thing rests on the other. */
export function sightChecks(
  progress: SweepProgress | null,
  tests: SightTests = {},
  mayMirror = false,
): readonly SightCheck[] {
  const bad = firstBad(progress);
  const badAt = bad === null ? SEEN.length : SEEN.indexOf(bad.name);
  const seen = SEEN.map((name, i) => ({
    name,
    state: i < badAt ? ('good' as const) : ('not-yet' as const),
    todo: i === badAt && bad !== null ? bad.todo : null,
  }));
  return [...seen, ...TRIED.map((name) => triedCheck(name, tests, mayMirror))];
}

/** What keeps a good sweep from beginning: what is not seen, then what was seen the wrong way round. */
export function firstTodo(checks: readonly SightCheck[]): string | null {
  return checks.find(({ state, todo }) => state === 'not-yet' && todo !== null)?.todo ?? null;
}

function triedCheck(
  name: (typeof TRIED)[number],
  tests: SightTests,
  mayMirror: boolean,
): SightCheck {
  const outcome = tests[name];
  // A camera that may mirror is not taken on trust: the trial comes before the sweep.
  if (outcome === undefined && name === 'turn' && mayMirror) {
    return { name, state: 'not-yet', todo: words.sight.tryMirror };
  }
  if (outcome === undefined) return { name, state: 'not-tried', todo: null };
  if (outcome === 'confirmed') return { name, state: 'good', todo: null };
  return { name, state: 'not-yet', todo: words.sight.reversed[name] };
}

function firstBad(
  progress: SweepProgress | null,
): { readonly name: SeenName; readonly todo: string } | null {
  if (progress === null) return { name: 'picture', todo: words.sight.doPicture };
  const { stage, trouble } = progress;
  if (stage === 'following') return null;
  if (trouble === null) return { name: 'line', todo: words.sight.doLine };
  const todo = words.troubleNow[trouble];
  if (trouble === 'too-dark' || trouble === 'too-bright') return { name: 'light', todo };
  return { name: trouble === 'line-lost' ? 'line' : 'edge', todo };
}
