import type { NextStep } from '../../job/jobSteps.ts';
import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';

/** Where the next thing to do is done, and its name on a button. */
export interface NextStepLink {
  readonly href: string;
  readonly word: string;
}

export function nextStepLink(wheelId: string, next: NextStep): NextStepLink {
  return { href: placeOf(wheelId, next), word: words.job.next[next.kind] };
}

function placeOf(wheelId: string, next: NextStep): string {
  switch (next.kind) {
    case 'bench':
      return places.bench(wheelId);
    case 'sweep':
    case 'check':
      return places.sight(wheelId);
    case 'weights':
      return places.weights(wheelId, next.entryId);
    case 'verdict':
    case 'proved':
      return places.proof(wheelId, next.entryId);
  }
}
