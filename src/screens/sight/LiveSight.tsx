import { useState } from 'react';

import type { SightingState } from '../../contract/session.ts';
import { mayMirror } from '../../session/mayMirror.ts';
import { useApp } from '../shell/appContext.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { LiveFrame } from '../sweep/LiveFrame.tsx';
import { words } from '../words/words.ts';
import { CameraPanel } from './CameraPanel.tsx';
import { EdgePicker, type PictureShare } from './EdgePicker.tsx';
import { SightList } from './SightList.tsx';
import { firstTodo, sightChecks } from './sightChecks.ts';
import { useKeptTests } from './useKeptTests.ts';
import { useSignTest } from './useSignTest.ts';

/** The live picture with what is seen in it; a touch on it chooses another edge. */
export function LiveSight({ state }: { readonly state: SightingState }) {
  const { session, settings } = useApp();
  const [isCameraOpen, setCameraOpen] = useState(false);
  const { progress, setup } = state;
  useKeptTests(state);
  const overlay = progress?.overlay ?? null;
  const tests = setup.sight.tested ?? {};
  const trial = useSignTest(progress, tests, settings.hearing, (next) => session.noteTests(next));
  const checks = sightChecks(progress, tests, mayMirror(state.stream));
  const todo = firstTodo(checks);
  const isSeen = progress?.stage === 'following';
  const pick = (place: PictureShare) => {
    if (progress === null || overlay === null) return;
    const edgePoint = {
      xPx: place.x * overlay.widthPx,
      yPx: place.y * overlay.heightPx,
      timeS: progress.timeS,
    };
    session.changeSight({ ...setup, sight: { ...setup.sight, edgePoint } }, 'edge');
  };
  const start = () => {
    unlockHearing();
    session.beginSweep();
  };
  const tryOut = () => {
    unlockHearing();
    if (trial.step === null) trial.start();
    else trial.stop();
  };
  // What is not seen comes first: nothing can be tried then.
  const step = isSeen ? trial.step : null;
  return (
    <LiveFrame
      mode="aim"
      source={state.source}
      title={words.sight.title}
      say={step === null ? (todo ?? words.sight.ready) : words.sight.signSteps[step]}
      tone={step === null && todo === null ? 'done' : 'calm'}
      notice={state.notice}
      stream={state.stream}
      progress={progress}
      overPicture={overlay !== null && <EdgePicker onPick={pick} />}
    >
      <div className="live-side">
        <SightList checks={checks} />
        {isSeen && <p>{words.sight.pickHint}</p>}
      </div>
      <div className="live-end sight-end">
        <button
          type="button"
          className="plain"
          aria-expanded={isCameraOpen}
          data-role="camera-panel"
          onClick={() => setCameraOpen(!isCameraOpen)}
        >
          {words.sight.camera}
        </button>
        <button
          type="button"
          className="plain"
          data-role="try-signs"
          disabled={!isSeen && trial.step === null}
          onClick={tryOut}
        >
          {trial.step === null ? words.sight.trySigns : words.sight.stopTrial}
        </button>
        <button type="button" className="main" data-role="begin-sweep" onClick={start}>
          {words.sight.startSweep}
        </button>
      </div>
      {isCameraOpen && (
        <div className="live-under">
          <CameraPanel state={state} />
        </div>
      )}
    </LiveFrame>
  );
}
