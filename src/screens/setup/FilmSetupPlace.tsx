import { useApp } from '../shell/appContext.ts';
import { unlockTones } from '../sweep/tones.ts';
import { assumedNames, type SetupDraft } from './setupDraft.ts';
import { SetupScreen } from './SetupScreen.tsx';

/** The form of a film that came without a setup file, or of a camera sweep without a wheel. */
export function FilmSetupPlace() {
  const { session, settings, films } = useApp();
  const { forForm } = films;
  const assumedIn = (draft: SetupDraft) => assumedNames(draft);
  return (
    <SetupScreen
      purpose={forForm === null ? 'camera' : 'film'}
      filmName={forForm?.film.name ?? null}
      draft={forForm?.draft ?? settings.draft}
      onSubmit={(setup, draft, deviceId) => {
        unlockTones();
        settings.rememberDraft(draft);
        if (forForm !== null) return films.readWith(setup, assumedIn(draft));
        void session.startCamera(setup, {
          ...(deviceId === undefined ? {} : { deviceId }),
          errand: { wheelId: null, assumed: assumedIn(draft) },
        });
      }}
      onBack={() => history.back()}
    />
  );
}
