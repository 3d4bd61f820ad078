import type { SightTests } from '../../contract/setup.ts';
import { words } from './words.ts';

/** How the trials by hand came out: "right way up, turning not tried". */
export function signsText(tested: SightTests = {}): string {
  const { signsUp, signsTurn } = words.reading;
  return `${signsUp[tested.up ?? 'untried']}, ${signsTurn[tested.turn ?? 'untried']}`;
}
