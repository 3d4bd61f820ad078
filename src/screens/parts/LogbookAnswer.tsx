import type { ReactNode } from 'react';

import type { LogbookTrouble } from '../../contract/logbook.ts';
import type { Failure } from '../../contract/outcome.ts';
import type { Fetched } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';
import { CautionIcon } from './icons.tsx';
import { ScreenTitle } from './ScreenTitle.tsx';

type Values<A extends readonly Fetched<unknown>[]> = {
  readonly [I in keyof A]: A[I] extends Fetched<infer T> ? T : never;
};

export interface LogbookAnswerProps<A extends readonly Fetched<unknown>[]> {
  readonly answers: readonly [...A];
  /** A write did not succeed: said over the screen. */
  readonly isTroubled?: boolean;
  readonly children: (...values: Values<A>) => ReactNode;
}

/** Draws once all that was asked of the logbook is there; says so when it is not to be had. */
export function LogbookAnswer<A extends readonly Fetched<unknown>[]>(props: LogbookAnswerProps<A>) {
  const { answers, isTroubled = false, children } = props;
  const values: unknown[] = [];
  for (const answer of answers) {
    if (answer === null) return null;
    if (!answer.ok) {
      return (
        <div>
          <ScreenTitle>{gapWords(answer.failure)}</ScreenTitle>
        </div>
      );
    }
    values.push(answer.value);
  }
  return (
    <>
      {isTroubled && (
        <p className="notice" role="alert">
          <CautionIcon />
          {words.job.storageTrouble}
        </p>
      )}
      {children(...(values as unknown as Values<A>))}
    </>
  );
}

function gapWords({ code, evidence }: Failure<LogbookTrouble>): string {
  if (code !== 'not-found') return words.job.storageTrouble;
  return 'entryId' in evidence ? words.job.noReadingHere : words.job.notFound;
}
