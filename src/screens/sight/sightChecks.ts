import type { SweepProgress } from '../../contract/sweep.ts';
import { words } from '../words/words.ts';

const NAMES = ['picture', 'light', 'line', 'edge'] as const;
export type SightCheckName = (typeof NAMES)[number];

export interface SightCheck {
  readonly name: SightCheckName;
  readonly isGood: boolean;
  /** What to do about it; only of the first that is not good, since the rest hang on it. */
  readonly todo: string | null;
}

/** What must be seen before a sweep, in the order in which one thing rests on the other. */
export function sightChecks(progress: SweepProgress | null): readonly SightCheck[] {
  const bad = firstBad(progress);
  const badAt = bad === null ? NAMES.length : NAMES.indexOf(bad.name);
  return NAMES.map((name, i) => ({
    name,
    isGood: i < badAt,
    todo: i === badAt && bad !== null ? bad.todo : null,
  }));
}

function firstBad(
  progress: SweepProgress | null,
): { readonly name: SightCheckName; readonly todo: string } | null {
  if (progress === null) return { name: 'picture', todo: words.sight.doPicture };
  const { stage, trouble } = progress;
  if (stage === 'following') return null;
  if (trouble === null) return { name: 'line', todo: words.sight.doLine };
  const todo = words.troubleNow[trouble];
  if (trouble === 'too-dark' || trouble === 'too-bright') return { name: 'light', todo };
  return { name: trouble === 'line-lost' ? 'line' : 'edge', todo };
}
