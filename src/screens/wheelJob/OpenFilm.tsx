import type { ChangeEvent } from 'react';

import type { StandRecord, WheelRecord } from '../../contract/logbook.ts';
import { nextSetup } from '../../job/sweepSetup.ts';
import type { WheelState } from '../../job/wheelState.ts';
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
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const files = [...(input.files ?? [])];
    // Emptied, so that choosing the same files again is a change again.
    input.value = '';
    if (files.length === 0) return;
    const { setup, assumed } = nextSetup(wheel, stand, state);
    const earlier = state.lastSweep?.reading ?? null;
    films.openFor({ wheelId: wheel.id, setup, assumed, earlier }, files);
  };
  return (
    <label className="plain wheel-film">
      <input
        type="file"
        multiple
        accept="video/*,.json,application/json"
        data-role="wheel-film"
        className="unseen"
        aria-label={`${words.job.openFilm}. ${words.job.openFilmHelp}`}
        onChange={choose}
      />
      <span aria-hidden="true">{words.job.openFilm}</span>
    </label>
  );
}
