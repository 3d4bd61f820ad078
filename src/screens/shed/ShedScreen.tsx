import { Link, useLocation } from 'wouter';

import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { useWheels } from '../shell/useLogbook.ts';
import { StartScreen } from '../start/StartScreen.tsx';
import { useSessionState } from '../state/useSessionState.ts';
import { unlockTones } from '../sweep/tones.ts';

/** Home: the wheels in hand, and the ways to a reading. */
export function ShedScreen() {
  const { session, settings, films, streak } = useApp();
  const [, goTo] = useLocation();
  const state = useSessionState(session);
  const wheels = useWheels();
  const inShed = wheels?.ok ? wheels.value.filter(({ removedAt }) => removedAt === null) : [];
  const { changeSetup } = films;
  return (
    <>
      <StartScreen
        problem={state.phase === 'choosing' ? state.problem : null}
        streak={streak}
        cautionsSeen={settings.cautionsSeen}
        onCautionsSeen={settings.rememberCautionsSeen}
        onSample={() => {
          unlockTones();
          void session.readSample();
        }}
        onFiles={(chosen) => films.open(chosen)}
        onCamera={() => goTo(places.filmSetup)}
        onEnterSetup={changeSetup === null ? null : () => changeSetup(null)}
      />
      <ul>
        {inShed.map((wheel) => (
          <li key={wheel.id}>
            <Link href={places.wheel(wheel.id)}>{wheel.label}</Link>
          </li>
        ))}
      </ul>
    </>
  );
}
