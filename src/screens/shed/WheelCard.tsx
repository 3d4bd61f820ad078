import { Link } from 'wouter';

import type { WheelRecord } from '../../contract/logbook.ts';
import { nextStepOfRecord } from '../../job/jobSteps.ts';
import { TakeOutIcon } from '../parts/icons.tsx';
import { StageSign } from '../parts/StageSign.tsx';
import { WheelSign } from '../parts/WheelSign.tsx';
import { places } from '../shell/places.ts';
import { nextStepLink } from '../wheelJob/nextStepLink.ts';
import { formatClock, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface WheelCardProps {
  readonly wheel: WheelRecord;
  readonly units: Units;
  readonly onTakeOut: () => void;
}

/** One wheel in hand: where it stands, its last figure, and the next thing to do. */
export function WheelCard({ wheel, units, onTakeOut }: WheelCardProps) {
  const { stage, lastReading } = wheel;
  const next = nextStepLink(wheel.id, nextStepOfRecord(wheel));
  const name = wheel.label || words.reading.unnamed;
  const about = [wheel.place, wheel.tyre].filter((text) => text !== '').join(' · ');
  return (
    <li className="card" data-stage={stage}>
      <div className="card-head">
        <Link className="card-sign" href={places.wheel(wheel.id)} aria-label={name}>
          <WheelSign stage={stage} lightSpotDeg={lastReading?.lightSpotDeg ?? null} />
        </Link>
        <div className="card-words">
          <h2 className="card-name">{name}</h2>
          {about !== '' && <p className="card-about">{about}</p>}
          <p className="card-stage">
            <StageSign stage={stage} />
            {words.job.stages[stage]}
          </p>
          {lastReading !== null && (
            <p className="card-figure">{figureOf(lastReading, stage === 'proved', units)}</p>
          )}
        </div>
        <button
          type="button"
          className="card-out"
          aria-label={`${words.job.takeOut}: ${name}`}
          onClick={onTakeOut}
        >
          <TakeOutIcon />
        </button>
      </div>
      <Link className="main" href={next.href} data-role="next-step">
        {next.word}
        <span className="unseen">{`: ${name}`}</span>
      </Link>
    </li>
  );
}

function figureOf(
  { amountG, plusMinusG, lightSpotDeg, isCheck }: NonNullable<WheelRecord['lastReading']>,
  isProved: boolean,
  units: Units,
): string {
  const amount = formatMass(amountG, units, plusMinusG).text;
  // What is left on a proved wheel is below one weight: its place does not matter any more.
  if (isProved) return `${amount} ${words.job.left}`;
  return words.job.at(isCheck ? `${amount} ${words.job.left}` : amount, formatClock(lightSpotDeg));
}
