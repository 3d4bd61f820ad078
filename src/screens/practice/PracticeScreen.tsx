import { useEffect } from 'react';

import { practiceRoom } from '../../session/practice/practiceRoom.ts';
import { DIFFICULTIES, type Difficulty } from '../../session/practice/practiceStand.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { useStand } from '../shell/useLogbook.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { words } from '../words/words.ts';
import { ByEyeLesson } from './ByEyeLesson.tsx';
import PracticeHand from './PracticeHand.tsx';
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
  const room = practiceRoom();
  const { stand, sweeps } = state;
  useEffect(() => {
    if (sessionState.phase === 'read' && sessionState.source === 'practice') {
      practiceRoom().keep(sessionState.result);
    }
  }, [sessionState]);
  const { units } = settings;
  const last = sweeps.at(-1);
  const ownStand = useStand();
  const stock = ownStand?.ok ? ownStand.value.stock : [];
  const { todo } = practiceStep(state, stock);
  const read = () => {
    unlockHearing();
    void session.startCamera(stand.setupNow(), { source: stand.source });
  };
  const open = (seed: number, difficulty: Difficulty) => room.open({ seed, difficulty });
  return (
    <div className="practice">
      <ScreenTitle>{words.practice.title}</ScreenTitle>
      <PracticeNext state={state} stock={stock} units={units} onRead={read} />
      <div className="practice-stage">
        <StandPictureView stand={stand} />
        <PracticeHand />
      </div>
      <div className="practice-side fields">
        {last !== undefined && <PracticeOutcome state={state} sweep={last} units={units} />}
        {last === undefined && (
          <ByEyeLesson guess={state.guess} setup={stand.setup} units={units} />
        )}
        <RimWeights state={state} units={units} />
        {state.truthShown ? (
          <PracticeTruthTable state={state} units={units} />
        ) : todo === 'done' ? null : (
          <button
            type="button"
            className="plain"
            data-role="show-truth"
            onClick={() => room.showTruth()}
          >
            {words.practice.showTruth}
          </button>
        )}
        <section className="group" data-role="practice-choice" data-seed={stand.seed}>
          <h2>{words.practice.seed(stand.seed)}</h2>
          <ChoiceTiles
            label={words.practice.difficulty}
            tiles={DIFFICULTIES.map((value) => ({
              value,
              word: words.practice.difficulties[value],
            }))}
            chosen={stand.difficulty}
            onChoose={(value) => open(stand.seed, value)}
          />
          {todo !== 'leave' && (
            <button
              type="button"
              className="plain"
              data-role="another-wheel"
              onClick={() => open(stand.seed + 1, stand.difficulty)}
            >
              {words.practice.another}
            </button>
          )}
        </section>
      </div>
    </div>
  );
}
