import { nextSetup } from '../../job/sweepSetup.ts';
import { wheelState } from '../../job/wheelState.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { useEntries, useStand, useWheel } from '../shell/useLogbook.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { words } from '../words/words.ts';
import { CameraExplained } from './CameraExplained.tsx';
import { LiveSight } from './LiveSight.tsx';
import { useOpenSight, type SightWish } from './useOpenSight.ts';
import { useWakeLock } from './useWakeLock.ts';
import './sight.css';

export interface SightScreenProps {
  readonly wheelId: string;
}

/** Camera on the wheel: what is seen, what is not yet, and the way into the sweep. */
export default function SightScreen({ wheelId }: SightScreenProps) {
  const { session, streak } = useApp();
  const state = useSessionState(session);
  const wheel = useWheel(wheelId);
  const { open, leave } = useOpenSight(useSightWish(wheelId));
  const { mayGoDark } = useWakeLock();
  if (wheel?.ok === false) return <p className="instruction">{words.sight.notFound}</p>;
  if (state.phase === 'sighting') return <LiveSight state={state} mayGoDark={mayGoDark} />;
  const problem = state.phase === 'choosing' ? state.problem : null;
  return (
    <div className="sight-closed">
      <ScreenTitle>{words.sight.title}</ScreenTitle>
      {problem !== null ? (
        <NoticePanel role="problem" notice={problem} streak={streak}>
          <button type="button" className="main" data-role="open-sight" onClick={open}>
            {words.sight.startCamera}
          </button>
        </NoticePanel>
      ) : leave.stage === 'explain' ? (
        <CameraExplained onUnderstood={leave.understood} />
      ) : (
        <p className="instruction" role="status">
          {words.sight.opening}
        </p>
      )}
    </div>
  );
}

/** The next sweep of the wheel, once the logbook has answered. */
function useSightWish(wheelId: string): SightWish | null {
  const wheel = useWheel(wheelId);
  const stand = useStand();
  const entries = useEntries(wheelId);
  if (!wheel?.ok || !stand?.ok || !entries?.ok) return null;
  const job = wheelState(entries.value, wheel.value);
  const { setup, assumed } = nextSetup(wheel.value, stand.value, job);
  const earlier = setup.after ? (job.lastSweep?.reading ?? null) : null;
  const { deviceId, tested = null } = stand.value.camera;
  return { wheelId, setup, assumed, earlier, deviceId, tested };
}
