import { useState } from 'react';

import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { UndoBar } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { Cautions } from '../start/Cautions.tsx';
import { StandFromTheSide } from '../start/StandFromTheSide.tsx';
import { useNoticeStreak, useSessionState } from '../state/useSessionState.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { words } from '../words/words.ts';
import { BrokenOffNotice } from './BrokenOffNotice.tsx';
import { DropPlace } from './DropPlace.tsx';
import { useShedWheels } from './useShedWheels.ts';
import { Ways } from './Ways.tsx';
import { WheelCard } from './WheelCard.tsx';
import './shed.css';

/** Home: the wheels in hand, each with the next thing to do; empty, what the job is about. */
export function ShedScreen() {
  const { session, settings, films } = useApp();
  const { inShed, isTroubled, offer, add, takeOut } = useShedWheels();
  const isFirst = inShed !== null && inShed.length === 0;
  const openFiles = (chosen: readonly File[]) => films.open(chosen);
  const readSample = () => {
    unlockHearing();
    void session.readSample();
  };
  return (
    <DropPlace className={isFirst ? 'shed shed-first' : 'shed'} onFiles={openFiles}>
      <div className="shed-title">
        <ScreenTitle>{isFirst ? words.shed.firstTitle : words.shed.title}</ScreenTitle>
        {isFirst && <p>{words.shed.firstLead}</p>}
      </div>
      <Problem />
      <BrokenOffNotice />
      {isTroubled && <p className="notice">{words.job.storageTrouble}</p>}
      {isFirst && <StandFromTheSide />}
      {inShed !== null && inShed.length > 0 && (
        <ul className="cards">
          {inShed.map((wheel) => (
            <WheelCard
              key={wheel.id}
              wheel={wheel}
              units={settings.units}
              onTakeOut={() => takeOut(wheel)}
            />
          ))}
        </ul>
      )}
      {inShed !== null && (
        <Ways isFirst={isFirst} onWheel={add} onSample={readSample} onFiles={openFiles} />
      )}
      <CautionsOnce />
      <UndoBar offer={offer} />
    </DropPlace>
  );
}

/** What went wrong with the last sweep that gave no reading. */
function Problem() {
  const { session, films } = useApp();
  const state = useSessionState(session);
  const streak = useNoticeStreak(state);
  const problem = state.phase === 'choosing' ? state.problem : null;
  if (problem === null) return null;
  const { changeSetup } = films;
  return (
    <NoticePanel role="problem" notice={problem} streak={streak}>
      {changeSetup !== null && problem.code.startsWith('setup-') && (
        <button type="button" className="plain" onClick={() => changeSetup(null)}>
          {words.start.enterSetup}
        </button>
      )}
    </NoticePanel>
  );
}

/** Until they are understood; from then on the settings have them. */
function CautionsOnce() {
  const { settings } = useApp();
  const [isOpen, setOpen] = useState(!settings.cautionsSeen);
  if (!isOpen) return null;
  return (
    <Cautions
      onUnderstood={() => {
        setOpen(false);
        settings.rememberCautionsSeen();
      }}
    />
  );
}
