import { useCallback, useRef, useState } from 'react';

import type { SweepSession } from '../contract/session.ts';
import type { SweepSetup } from '../contract/setup.ts';
import { AppHeader } from './parts/AppHeader.tsx';
import { ReadScreen } from './read/ReadScreen.tsx';
import { SetupScreen } from './setup/SetupScreen.tsx';
import { assumedNames, draftOf, type SetupDraft } from './setup/setupDraft.ts';
import { filmWithoutSetup, withSetupFile } from './start/filmWithoutSetup.ts';
import { StartScreen } from './start/StartScreen.tsx';
import { useSettings } from './state/useSettings.ts';
import { useLaserColour, useNoticeStreak, useSessionState } from './state/useSessionState.ts';
import { SweepScreen } from './sweep/SweepScreen.tsx';
import { unlockTones } from './sweep/tones.ts';
import './look/look.css';

export interface AppProps {
  readonly session: SweepSession;
}

/** The form that is open before a sweep can start, and for what. */
type OpenForm =
  | { readonly purpose: 'camera' }
  | { readonly purpose: 'film'; readonly film: File; readonly draft: SetupDraft | null };

export function App({ session }: AppProps) {
  const state = useSessionState(session);
  const streak = useNoticeStreak(state);
  const laser = useLaserColour(state);
  const settings = useSettings();
  const [form, setForm] = useState<OpenForm | null>(null);
  const [assumed, setAssumed] = useState<readonly string[]>([]);
  const files = useRef<readonly File[]>([]);

  const begin = useCallback((start: () => Promise<void>, assumedNow: readonly string[] = []) => {
    unlockTones();
    setForm(null);
    setAssumed(assumedNow);
    void start();
  }, []);

  const openFiles = async (chosen: readonly File[]) => {
    files.current = chosen;
    const film = await filmWithoutSetup(chosen);
    if (film !== null) setForm({ purpose: 'film', film, draft: null });
    else begin(() => session.readFiles(chosen));
  };

  const submitForm = (open: OpenForm, setup: SweepSetup, draft: SetupDraft, deviceId?: string) => {
    settings.rememberDraft(draft);
    const assumedNow = assumedNames(draft);
    if (open.purpose === 'camera') {
      begin(() => session.startCamera(setup, deviceId), assumedNow);
      return;
    }
    begin(async () => {
      files.current = await withSetupFile(files.current, open.film, setup);
      await session.readFiles(files.current);
    }, assumedNow);
  };

  const filmOfLast = () => files.current.find((file) => !file.name.endsWith('.json')) ?? null;

  const changeSetup = (setup: SweepSetup | null) => {
    const film = filmOfLast();
    if (film === null) return;
    setForm({ purpose: 'film', film, draft: setup === null ? null : draftOf(setup) });
    if (session.getState().phase !== 'choosing') session.stop();
  };

  const mainState =
    state.phase === 'read'
      ? { 'data-phase': 'read', 'data-status': state.result.reading.status }
      : { 'data-phase': state.phase };

  return (
    <div className="app" data-laser={laser}>
      <AppHeader settings={settings} />
      <main {...mainState}>
        {state.phase === 'choosing' && form !== null && (
          <SetupScreen
            purpose={form.purpose}
            filmName={form.purpose === 'film' ? form.film.name : null}
            draft={(form.purpose === 'film' ? form.draft : null) ?? settings.draft}
            onSubmit={(setup, draft, deviceId) => submitForm(form, setup, draft, deviceId)}
            onBack={() => setForm(null)}
          />
        )}
        {state.phase === 'choosing' && form === null && (
          <StartScreen
            problem={state.problem}
            streak={streak}
            cautionsSeen={settings.cautionsSeen}
            onCautionsSeen={settings.rememberCautionsSeen}
            onSample={() => begin(() => session.readSample())}
            onFiles={(chosen) => void openFiles(chosen)}
            onCamera={() => setForm({ purpose: 'camera' })}
            onEnterSetup={filmOfLast() === null ? null : () => changeSetup(null)}
          />
        )}
        {state.phase === 'sweeping' && (
          <SweepScreen session={session} state={state} sound={settings.sound} />
        )}
        {state.phase === 'read' && (
          <ReadScreen
            state={state}
            streak={streak}
            unit={settings.unit}
            assumed={assumed}
            onSampleAgain={() => begin(() => session.readSample())}
            onCameraAgain={() => begin(() => session.startCamera(state.setup), assumed)}
            onChangeSetup={filmOfLast() === null ? null : () => changeSetup(state.setup)}
            onAnother={() => session.stop()}
          />
        )}
      </main>
    </div>
  );
}
