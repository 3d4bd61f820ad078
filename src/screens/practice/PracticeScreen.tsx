import { useEffect } from 'react';

import { practiceRoom } from '../../session/practice/practiceRoom.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { useStand } from '../shell/useLogbook.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { words } from '../words/words.ts';
import { ByEyeLesson } from './ByEyeLesson.tsx';
import PracticeHand from './PracticeHand.tsx';
import { PracticeChoice } from './PracticeChoice.tsx';
import { PracticeNext } from './PracticeNext.tsx';
import { PracticeOutcome } from './PracticeOutcome.tsx';
import { practiceStep } from './practiceStep.ts';
import { PracticeTruthTable } from './PracticeTruthTable.tsx';
import { RimWeights } from './RimWeights.tsx';
import { StandPictureView } from './StandPictureView.tsx';
import { usePracticeRoom } from './usePracticeRoom.ts';
import './practice.css';

/** A wheel to balance without a wheel: look, guess, read, stick on, prove; then the truth. */
export default function PracticeScreen() {
  const { session, settings } = useApp();
  const state = usePracticeRoom();
  const sessionState = useSessionState(session);
  const { stand, sweeps, truthShown } = state;
  useEffect(() => {
    if (sessionState.phase === 'read' && sessionState.source === 'practice') {
      practiceRoom().keep(sessionState.result);
    }
  }, [sessionState]);
  const { units } = settings;
  const last = sweeps.at(-1);
  const ownStand = useStand();
  const step = practiceStep(state, ownStand?.ok ? ownStand.value.stock : []);
  const read = () => {
    unlockHearing();
    void session.startCamera(stand.setupNow(), { source: stand.source });
  };
  return (
    <div className="practice">
      <ScreenTitle>{words.practice.title}</ScreenTitle>
      <PracticeNext state={state} step={step} units={units} onRead={read} />
      {(truthShown || last !== undefined) && (
        <div className="practice-answer fields">
          {truthShown && <PracticeTruthTable state={state} units={units} />}
          {last !== undefined && <PracticeOutcome state={state} sweep={last} units={units} />}
        </div>
      )}
      <div className="practice-stage">
        <StandPictureView stand={stand} />
        <PracticeHand />
      </div>
      <div className="practice-side fields">
        {last === undefined && (
          <ByEyeLesson guess={state.guess} setup={stand.setup} units={units} />
        )}
        <RimWeights
          state={state}
          proposed={step.todo === 'stick' ? step.weights : []}
          units={units}
        />
        {!truthShown && step.todo !== 'done' && (
          <button
            type="button"
            className="plain"
            data-role="show-truth"
            onClick={() => practiceRoom().showTruth()}
          >
            {words.practice.showTruth}
          </button>
        )}
        <PracticeChoice stand={stand} isNextOffered={step.todo !== 'leave'} />
      </div>
    </div>
  );
}
