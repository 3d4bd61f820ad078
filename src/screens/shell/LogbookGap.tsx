import { Link } from 'wouter';

import type { LogbookTrouble } from '../../contract/logbook.ts';
import type { Outcome } from '../../contract/outcome.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { words } from '../words/words.ts';
import { places } from './places.ts';

/** Shown where the logbook has no answer: nothing yet, or a reason and the way home. */
export function LogbookGap({
  answer,
}: {
  readonly answer: Outcome<unknown, LogbookTrouble> | null;
}) {
  if (answer === null || answer.ok) return <p role="status">{words.common.opening}</p>;
  return (
    <div className="gap">
      <ScreenTitle>{words.common.gaps[answer.failure.code]}</ScreenTitle>
      <p>
        <Link className="plain" href={places.shed}>
          {words.common.toShed}
        </Link>
      </p>
    </div>
  );
}
