import { useState } from 'react';

import type { SightingState } from '../../contract/session.ts';
import { mayMirror } from '../../session/mayMirror.ts';
import { useApp } from '../shell/appContext.ts';
import { readBoolean, usePreference } from '../state/preference.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { LiveFrame } from '../sweep/LiveFrame.tsx';
import { words } from '../words/words.ts';
import { CameraPanel } from './CameraPanel.tsx';
import { EdgePicker, type PictureShare } from './EdgePicker.tsx';
import { ScreenMayGoDark } from './ScreenMayGoDark.tsx';
import { SightList } from './SightList.tsx';
import { firstTodo, sightChecks } from './sightChecks.ts';
import { useKeptTests } from './useKeptTests.ts';
import { useSignTest } from './useSignTest.ts';

export interface LiveSightProps {
  readonly state: SightingState;
  /** Whether the screen may go dark in the sweep. */
  readonly mayGoDark: boolean;
}

/** The live picture with what is seen in it; a touch on it chooses another edge. */
export function LiveSight({ state, mayGoDark }: LiveSightProps) {
  const { session, settings } = useApp();
  const [isCameraOpen, setCameraOpen] = useState(false);
  const [isDarkTold, setDarkTold] = usePreference('toldScreenMayGoDark', false, readBoolean);
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
        {mayGoDark && !isDarkTold ? (
          <ScreenMayGoDark onUnderstood={() => setDarkTold(true)} />
        ) : (
          <SightList checks={checks} />
        )}
        {isSeen && <p>{words.sight.pickHint}</p>}
      </div>
      <SightButtons
        isSeen={isSeen}
        isTrying={trial.step !== null}
        isCameraOpen={isCameraOpen}
        onCamera={() => setCameraOpen(!isCameraOpen)}
        onTrial={tryOut}
        onStart={start}
      />
      {isCameraOpen && (
        <div className="live-under">
          <CameraPanel state={state} />
        </div>
      )}
    </LiveFrame>
  );
}

interface SightButtonsProps {
  readonly isSeen: boolean;
  readonly isTrying: boolean;
  readonly isCameraOpen: boolean;
  readonly onCamera: () => void;
  readonly onTrial: () => void;
  readonly onStart: () => void;
}

function SightButtons(props: SightButtonsProps) {
  const { isSeen, isTrying, isCameraOpen, onCamera, onTrial, onStart } = props;
  return (
    <div className="live-end sight-end">
      <button
        type="button"
        className="plain"
        aria-expanded={isCameraOpen}
        data-role="camera-panel"
        onClick={onCamera}
      >
        {words.sight.camera}
      </button>
      <button
        type="button"
        className="plain"
        data-role="try-signs"
        disabled={!isSeen && !isTrying}
        onClick={onTrial}
      >
        {isTrying ? words.sight.stopTrial : words.sight.trySigns}
      </button>
      {/* In the background until there is something to sweep. */}
      <button
        type="button"
        className={isSeen ? 'main' : 'plain'}
        data-role="begin-sweep"
        onClick={onStart}
      >
        {words.sight.startSweep}
      </button>
    </div>
  );
}
