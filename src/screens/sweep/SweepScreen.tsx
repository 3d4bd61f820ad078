import { lazy, Suspense } from 'react';

import type { SessionState } from '../../contract/session.ts';
import { useApp } from '../shell/appContext.ts';
import { causeOf } from '../state/refusalAdvice.ts';
import { noticeFor } from '../../contract/notice.ts';
import { words } from '../words/words.ts';
import { FilmProgress } from './FilmProgress.tsx';
import { GrowingTrace } from './GrowingTrace.tsx';
import { instructionFor, isLive } from './instructionFor.ts';
import { LiveFrame } from './LiveFrame.tsx';
import { ringWords } from './ringWords.ts';
import { SweepFacts } from './SweepFacts.tsx';
import { TurnRing } from './TurnRing.tsx';
import { useSweepEvents } from './useSweepEvents.ts';
import { useTurnTrace } from './useTurnTrace.ts';

/** The hand on the practice wheel: only there where one is practised on. */
const PracticeHand = lazy(() => import('../practice/PracticeHand.tsx'));

export type SweepingState = Extract<SessionState, { phase: 'sweeping' }>;

const WHOLE_TURN_DEG = 360;

/** Before a whole turn a reading would be refused: the button that asks for one stays in the background. */
const mayBeWhole = (progress: SweepingState['progress']): boolean =>
  progress !== null && progress.coveredDeg >= WHOLE_TURN_DEG;

/** One turn of the wheel: the ring fills, the trace grows, one line says what to do. */
export function SweepScreen({ state }: { readonly state: SweepingState }) {
  const { session, settings } = useApp();
  const { progress, source, fraction, pass = 1 } = state;
  const live = isLive(source);
  const instruction = instructionFor(progress, source, fraction, pass);
  // A film gives no orders to a hand.
  const hearing = live ? settings.hearing : { ...settings.hearing, voice: false };
  const event = useSweepEvents(progress, hearing, pass, live);
  const trace = useTurnTrace(progress);
  const trouble = live && instruction.tone === 'trouble' ? progress?.trouble : null;
  return (
    <LiveFrame
      mode="sweep"
      source={source}
      title={words.sweep.turnCovered}
      say={instruction.say}
      tone={instruction.tone}
      cause={trouble ? causeOf(noticeFor(trouble)) : null}
      notice={state.notice}
      stream={state.stream}
      progress={progress}
    >
      <div className="live-main">
        <TurnRing
          sectors={progress?.coveredSectors ?? []}
          coveredDeg={progress?.coveredDeg ?? 0}
          enough={progress?.enough ?? false}
          valveTurnDeg={progress?.markSeen ? progress.turnDeg : null}
          {...ringWords(progress, settings.units)}
        />
      </div>
      <div className="live-side">
        <SweepFacts
          progress={progress}
          event={event}
          framesDropped={state.framesDropped}
          units={settings.units}
          isLive={live}
        />
      </div>
      <div className="live-under">
        {source === 'practice' ? (
          <Suspense fallback={null}>
            <PracticeHand isSwept />
          </Suspense>
        ) : (
          <GrowingTrace
            trace={trace}
            units={settings.units}
            isOutline={progress?.edgeKind === 'outline'}
          />
        )}
      </div>
      <div className="live-end">
        {fraction !== null && <FilmProgress fraction={fraction} pass={pass} />}
        <button type="button" className="plain" data-role="stop" onClick={() => session.stop()}>
          {words.sweep.stop}
        </button>
        {live && (
          <button
            type="button"
            className={mayBeWhole(progress) ? 'main' : 'plain'}
            data-role="finish-sweep"
            onClick={() => void session.finishSweep()}
          >
            {words.sweep.finish}
          </button>
        )}
      </div>
    </LiveFrame>
  );
}
