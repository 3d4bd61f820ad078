import type { ReactNode } from 'react';
import { Link } from 'wouter';

import type { WheelRecord } from '../../contract/logbook.ts';
import { jobSteps, type JobPath, type NextStep } from '../../job/jobSteps.ts';
import { wheelState } from '../../job/wheelState.ts';
import { LogbookAnswer } from '../parts/LogbookAnswer.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { StageSign } from '../parts/StageSign.tsx';
import { UndoBar } from '../parts/UndoBar.tsx';
import { WheelSign } from '../parts/WheelSign.tsx';
import { places } from '../shell/places.ts';
import { useEntries, useStand, useWheel } from '../shell/useLogbook.ts';
import { formatClockAndDeg, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { useApp } from '../shell/appContext.ts';
import { AddNote } from './AddNote.tsx';
import { HandWeights } from './HandWeights.tsx';
import { History } from './History.tsx';
import { JobPathList } from './JobPathList.tsx';
import { nextStepLink } from './nextStepLink.ts';
import { OpenFilm } from './OpenFilm.tsx';
import { useWheelEntries } from './useWheelEntries.ts';
import './wheelJob.css';

export interface WheelScreenProps {
  readonly wheelId: string;
}

/** One wheel: where it stands, the one thing to do next, and all that was done to it. */
export default function WheelScreen({ wheelId }: WheelScreenProps) {
  const { settings } = useApp();
  const wheel = useWheel(wheelId);
  const entries = useEntries(wheelId);
  const stand = useStand();
  const { offer, isTroubled, add, takeBack, bringBack } = useWheelEntries(wheelId);
  return (
    <LogbookAnswer answers={[wheel, entries, stand]} isTroubled={isTroubled}>
      {(record, log, standRecord) => {
        const state = wheelState(log, record);
        const path = jobSteps(record, state, standRecord);
        return (
          <div className="wheel-job">
            <WheelHead wheel={record} path={path} units={settings.units}>
              <OpenFilm wheel={record} stand={standRecord} state={state} />
            </WheelHead>
            {record.removedAt !== null && (
              <p className="wheel-out">
                {words.job.outOfShed}
                <button type="button" className="plain" onClick={() => bringBack(record)}>
                  {words.job.bringBack}
                </button>
              </p>
            )}
            <JobPathList wheelId={wheelId} path={path} />
            <History entries={log} wheel={record} units={settings.units} onTakeBack={takeBack} />
            <div className="wheel-more">
              <HandWeights wheel={record} units={settings.units} onAdd={add} />
              <AddNote onAdd={add} />
            </div>
            <UndoBar offer={offer} />
          </div>
        );
      }}
    </LogbookAnswer>
  );
}

/** Where a turn of the wheel is what comes next, a film of one will do as well. */
const SWEEP_COMES_NEXT: readonly NextStep['kind'][] = ['bench', 'sweep', 'check'];

function WheelHead(props: {
  readonly wheel: WheelRecord;
  readonly path: JobPath;
  readonly units: Units;
  /** Further ways on, after those that follow from where the wheel stands. */
  readonly children: ReactNode;
}) {
  const { wheel, path, units } = props;
  const { stage, lastReading } = wheel;
  const next = nextStepLink(wheel.id, path.next);
  const about = [wheel.place, wheel.tyre].filter((text) => text !== '').join(' · ');
  return (
    <section className="wheel-head">
      <WheelSign stage={stage} lightSpotDeg={lastReading?.lightSpotDeg ?? null} />
      <div className="wheel-words">
        <ScreenTitle>{wheel.label || words.reading.unnamed}</ScreenTitle>
        {about !== '' && <p className="wheel-about">{about}</p>}
        <p className="wheel-stage">
          <StageSign stage={stage} />
          {words.job.stages[stage]}
          {lastReading !== null && (
            <strong>{lastFigure(lastReading, stage === 'proved', units)}</strong>
          )}
        </p>
        <p className="instruction">{words.job.lead[path.next.kind]}</p>
        <div className="wheel-next">
          <Link className="main" href={next.href} data-role="next-step">
            {next.word}
          </Link>
          {path.next.kind === 'bench' && (
            <Link className="plain" href={places.sight(wheel.id)}>
              {words.job.sweepAnyway}
            </Link>
          )}
          {(path.next.kind === 'proved' || path.next.kind === 'weights') && (
            <Link className="plain" href={places.sight(wheel.id)}>
              {words.job.sweepAgain}
            </Link>
          )}
          <Link className="plain" href={places.byEye(wheel.id)}>
            {words.job.byEye}
          </Link>
          {SWEEP_COMES_NEXT.includes(path.next.kind) && props.children}
        </div>
      </div>
    </section>
  );
}

function lastFigure(
  { amountG, plusMinusG, lightSpotDeg, isCheck }: NonNullable<WheelRecord['lastReading']>,
  isProved: boolean,
  units: Units,
): string {
  const amount = formatMass(amountG, units, plusMinusG).text;
  if (isProved) return `${amount} ${words.job.left}`;
  return words.job.at(
    `${amount} ${isCheck ? words.job.left : words.job.light}`,
    formatClockAndDeg(lightSpotDeg),
  );
}
