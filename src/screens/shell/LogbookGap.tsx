import { LogbookAnswer } from '../parts/LogbookAnswer.tsx';
import type { Fetched } from './useLogbook.ts';

/** Shown where the logbook has no answer: nothing yet, or why there is none. */
export function LogbookGap({ answer }: { readonly answer: Fetched<unknown> }) {
  return <LogbookAnswer answers={[answer]}>{() => null}</LogbookAnswer>;
}
