import { useState, type CSSProperties } from 'react';

import type { SessionState } from '../../contract/session.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { PictureView } from '../sweep/PictureView.tsx';
import { unlockTones } from '../sweep/tones.ts';
import { words } from '../words/words.ts';
import { EdgePicker, type PictureShare } from './EdgePicker.tsx';
import { SightList } from './SightList.tsx';
import { sightChecks } from './sightChecks.ts';
import '../sweep/sweep.css';

export type SightingState = Extract<SessionState, { phase: 'sighting' }>;

/** Width over height of the picture before the first one has come. */
const USUAL_SHAPE = 16 / 9;

/** The live picture with what is seen in it; a touch on it chooses another edge. */
export function LiveSight({ state }: { readonly state: SightingState }) {
  const { session, streak } = useApp();
  const [shape, setShape] = useState(USUAL_SHAPE);
  const { progress, setup } = state;
  const overlay = progress?.overlay ?? null;
  const checks = sightChecks(progress);
  const todo = checks.find((check) => check.todo !== null)?.todo ?? null;
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
    unlockTones();
    session.beginSweep();
  };
  return (
    <div className="sweep" data-source="camera" style={{ '--shape': shape } as CSSProperties}>
      <div className="sweep-say" data-tone={todo === null ? 'done' : 'calm'}>
        <ScreenTitle className="unseen">{words.sight.title}</ScreenTitle>
        <p className="instruction" role="status">
          {todo ?? words.sight.ready}
        </p>
      </div>
      {state.notice !== null && (
        <div className="sweep-notice">
          <NoticePanel role="notice" notice={state.notice} streak={streak} />
        </div>
      )}
      <PictureView
        session={session}
        stream={state.stream}
        isMeasuring={progress !== null}
        onShape={setShape}
      >
        {overlay !== null && <EdgePicker onPick={pick} />}
      </PictureView>
      <div className="sweep-side">
        <SightList checks={checks} />
        {todo === null && <p>{words.sight.pickHint}</p>}
      </div>
      <div className="sweep-end">
        <button type="button" className="main" data-role="begin-sweep" onClick={start}>
          {words.sight.startSweep}
        </button>
      </div>
    </div>
  );
}
