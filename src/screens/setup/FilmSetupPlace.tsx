import { useEffect } from 'react';

import { NoticePanel } from '../parts/NoticePanel.tsx';
import { useApp } from '../shell/appContext.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { assumedPaths } from './setupDraft.ts';
import { SetupScreen } from './SetupScreen.tsx';

/** The form of a film that came without a setup file, or of a camera sweep without a wheel. */
export function FilmSetupPlace() {
  const { session, settings, films, streak } = useApp();
  const state = useSessionState(session);
  const { forForm } = films;
  // A camera that opens after the person has gone would watch nobody knows what.
  useEffect(() => () => session.leaveCamera(), [session]);
  return (
    <div className="film-setup">
      {/* What kept the sweep from starting is said where it was started. */}
      {state.phase === 'choosing' && state.problem !== null && (
        <NoticePanel role="problem" notice={state.problem} streak={streak} />
      )}
      <SetupScreen
        purpose={forForm === null ? 'camera' : 'film'}
        filmName={forForm?.film.name ?? null}
        draft={forForm?.draft ?? settings.draft}
        earlier={forForm?.earlier ?? null}
        onEarlier={films.addEarlier}
        onSubmit={(setup, draft, deviceId) => {
          unlockHearing();
          settings.rememberDraft(draft);
          if (forForm !== null) return films.readWith(setup, assumedPaths(draft));
          void session.startCamera(setup, {
            ...(deviceId === undefined ? {} : { deviceId }),
            errand: { wheelId: null, assumed: assumedPaths(draft) },
          });
        }}
        onBack={() => history.back()}
      />
    </div>
  );
}
