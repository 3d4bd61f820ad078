import { lazy, Suspense, useState, type CSSProperties } from 'react';

import type { SessionState, SweepSession } from '../../contract/session.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { NO_STREAK } from '../state/refusalAdvice.ts';
import { REFUSALS } from '../../contract/refusals.ts';
import { words } from '../words/words.ts';
import { FilmProgress } from './FilmProgress.tsx';
import { instructionFor, isLive } from './instructionFor.ts';
import { PictureView } from './PictureView.tsx';
import { SpeedHint } from './SpeedHint.tsx';
import { SweepFacts } from './SweepFacts.tsx';
import { TurnRing } from './TurnRing.tsx';
import { useSweepEvents } from './useSweepEvents.ts';
import './sweep.css';

/** The hand on the practice wheel: only there where one is practised on. */
const PracticeHand = lazy(() => import('../practice/PracticeHand.tsx'));

export type SweepingState = Extract<SessionState, { phase: 'sweeping' }>;

export interface SweepScreenProps {
  readonly session: SweepSession;
  readonly state: SweepingState;
  readonly sound: boolean;
}

/** Width over height of the picture before the first one has come. */
const USUAL_SHAPE = 16 / 9;

export function SweepScreen({ session, state, sound }: SweepScreenProps) {
  const { progress, source, fraction, pass = 1 } = state;
  const [shape, setShape] = useState(USUAL_SHAPE);
  const instruction = instructionFor(progress, source, fraction, pass);
  const event = useSweepEvents(progress, sound, pass);
  const trouble = isLive(source) && instruction.tone === 'trouble' ? progress?.trouble : null;
  return (
    <div
      className="sweep"
      data-source={isLive(source) ? 'camera' : source}
      style={{ '--shape': shape } as CSSProperties}
    >
      <div className="sweep-say" data-tone={instruction.tone}>
        <ScreenTitle className="unseen">{words.sweep.turnCovered}</ScreenTitle>
        <p className="instruction" role="status">
          {instruction.say}
        </p>
        {trouble && <p className="sweep-cause">{REFUSALS[trouble].cause}</p>}
      </div>
      {state.notice !== null && (
        <div className="sweep-notice">
          <NoticePanel role="notice" notice={state.notice} streak={NO_STREAK} />
        </div>
      )}
      <PictureView
        session={session}
        stream={state.stream}
        isMeasuring={progress !== null}
        onShape={setShape}
      />
      <div className="sweep-side">
        {source === 'practice' && (
          <Suspense fallback={null}>
            <PracticeHand />
          </Suspense>
        )}
        <TurnRing
          sectors={progress?.coveredSectors ?? []}
          coveredDeg={progress?.coveredDeg ?? 0}
          enough={progress?.enough ?? false}
          valveTurnDeg={progress?.markSeen ? progress.turnDeg : null}
        />
        {isLive(source) && progress !== null && progress.stage !== 'looking' && (
          <SpeedHint turningDegPerS={progress.turningDegPerS} />
        )}
        <SweepFacts progress={progress} event={event} framesDropped={state.framesDropped} />
      </div>
      <div className="sweep-end">
        {fraction !== null && <FilmProgress fraction={fraction} pass={pass} />}
        <button type="button" className="plain" data-role="stop" onClick={() => session.stop()}>
          {words.sweep.stop}
        </button>
        {isLive(source) && (
          <button
            type="button"
            className="main"
            data-role="finish-sweep"
            onClick={() => void session.finishSweep()}
          >
            {words.sweep.finish}
          </button>
        )}
      </div>
    </div>
  );
}
