import type { StandRecord, WheelRecord } from '../../contract/logbook.ts';
import { nextSetup } from '../../job/sweepSetup.ts';
import type { WheelState } from '../../job/wheelState.ts';
import { SweepFilesInput } from '../parts/SweepFilesInput.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';

export interface OpenFilmProps {
  readonly wheel: WheelRecord;
  readonly stand: StandRecord;
  readonly state: WheelState;
}

/**
 * Takes a film of this wheel's next turn. The film alone is enough: what a setup file would say
 * stands on the bench and in the logbook.
 */
export function OpenFilm({ wheel, stand, state }: OpenFilmProps) {
  const { films } = useApp();
  const open = (files: readonly File[]) => {
    const { setup, assumed } = nextSetup(wheel, stand, state);
    const earlier = state.lastSweep?.reading ?? null;
    films.openFor({ wheelId: wheel.id, setup, assumed, earlier }, files);
  };
  return (
    <SweepFilesInput
      className="plain file-button"
      role="wheel-film"
      label={`${words.job.openFilm}. ${words.job.openFilmHelp}`}
      onFiles={open}
    >
      <span aria-hidden="true">{words.job.openFilm}</span>
    </SweepFilesInput>
  );
}
