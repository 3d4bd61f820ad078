import type { SessionState } from '../../contract/session.ts';
import { useApp } from '../shell/appContext.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { LiveFrame } from '../sweep/LiveFrame.tsx';
import { words } from '../words/words.ts';
import { EdgePicker, type PictureShare } from './EdgePicker.tsx';
import { SightList } from './SightList.tsx';
import { sightChecks } from './sightChecks.ts';

export type SightingState = Extract<SessionState, { phase: 'sighting' }>;

/** The live picture with what is seen in it; a touch on it chooses another edge. */
export function LiveSight({ state }: { readonly state: SightingState }) {
  const { session } = useApp();
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
    unlockHearing();
    session.beginSweep();
  };
  return (
    <LiveFrame
      mode="aim"
      source={state.source}
      title={words.sight.title}
      say={todo ?? words.sight.ready}
      tone={todo === null ? 'done' : 'calm'}
      notice={state.notice}
      stream={state.stream}
      progress={progress}
      overPicture={overlay !== null && <EdgePicker onPick={pick} />}
    >
      <div className="live-side">
        <SightList checks={checks} />
        {todo === null && <p>{words.sight.pickHint}</p>}
      </div>
      <div className="live-end">
        <button type="button" className="main" data-role="begin-sweep" onClick={start}>
          {words.sight.startSweep}
        </button>
      </div>
    </LiveFrame>
  );
}
