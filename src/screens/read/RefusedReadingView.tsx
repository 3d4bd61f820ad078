import type { ReactNode } from 'react';

import type { RefusedReading } from '../../contract/reading.ts';
import { SECTOR_COUNT, SECTOR_DEG } from '../../contract/sweep.ts';
import { EvidenceList } from '../parts/EvidenceList.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { causeOf, NO_STREAK, remedyOf, type NoticeStreak } from '../state/refusalAdvice.ts';
import { TurnRing } from '../sweep/TurnRing.tsx';
import { words } from '../words/words.ts';

export interface RefusedReadingViewProps {
  readonly reading: RefusedReading;
  readonly streak: NoticeStreak;
  readonly actions: ReactNode;
  readonly notices: ReactNode;
}

/** A ring that is full says nothing of why there is no reading, and looks like a success. */
const WHOLE_TURN_DEG = SECTOR_COUNT * SECTOR_DEG;

/** What was seen, what to change, sweep again. Never a figure of the wheel. */
export function RefusedReadingView({ reading, streak, actions, notices }: RefusedReadingViewProps) {
  const [first, ...others] = reading.refusals;
  const { turn } = reading;
  return (
    <div className="refused" data-code={first?.code}>
      <div className="refused-words">
        <p className="refused-kind">{words.reading.refusedTitle}</p>
        <ScreenTitle>
          {first === undefined ? words.reading.refusedTitle : causeOf(first)}
        </ScreenTitle>
        {first !== undefined && <p className="instruction">{remedyOf(first, streak)}</p>}
        {first?.evidence !== undefined && (
          <section className="refused-evidence">
            <h2>{words.reading.evidence}</h2>
            <EvidenceList evidence={first.evidence} />
          </section>
        )}
        {others.length > 0 && (
          <section className="refused-others">
            <h2>{words.reading.refusedAlso}</h2>
            <ul>
              {others.map((other) => (
                <li key={other.code}>
                  {causeOf(other)} {remedyOf(other, NO_STREAK)}
                </li>
              ))}
            </ul>
          </section>
        )}
        {notices}
        {actions}
      </div>
      {turn !== null && turn.coveredDeg < WHOLE_TURN_DEG && (
        <figure className="refused-turn">
          <TurnRing
            sectors={seenSectors(turn.coveredDeg)}
            coveredDeg={turn.coveredDeg}
            enough={false}
            valveTurnDeg={null}
          />
        </figure>
      )}
    </div>
  );
}

function seenSectors(coveredDeg: number): readonly boolean[] {
  const seen = Math.floor(coveredDeg / SECTOR_DEG);
  return Array.from({ length: SECTOR_COUNT }, (_, index) => index < seen);
}
