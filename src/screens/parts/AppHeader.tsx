import { Link, useLocation } from 'wouter';

import { HelpButton } from '../help/HelpButton.tsx';
import { parentPlace } from '../shell/parentPlace.ts';
import { places } from '../shell/places.ts';
import type { Settings } from '../state/useSettings.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { stopSpeaking } from '../sweep/speech.ts';
import { words } from '../words/words.ts';
import { BackIcon, PlumbIcon, SettingsIcon, SoundOffIcon, SoundOnIcon } from './icons.tsx';

/** Way up on the left; what is wanted at the wheel on the right, the same on every screen. */
export function AppHeader({ settings }: { readonly settings: Settings }) {
  const [path] = useLocation();
  const { hearing, switchHearing } = settings;
  const isHeard = hearing.tones || hearing.voice;
  const isSweeping = path === places.sweep;
  const toggle = () => {
    if (isHeard) stopSpeaking();
    else unlockHearing();
    switchHearing();
  };
  return (
    <header className="app-header">
      <WayUp path={path} />
      <div className="app-switches">
        <button type="button" className="switch" aria-pressed={isHeard} onClick={toggle}>
          {isHeard ? <SoundOnIcon /> : <SoundOffIcon />}
          <span className="switch-word">
            {isHeard ? words.common.soundOn : words.common.soundOff}
          </span>
        </button>
        <HelpButton path={path} />
        {/* Leaving a running sweep would end it. */}
        {!isSweeping && (
          <Link className="switch" href={places.settings}>
            <SettingsIcon />
            <span className="switch-word">{words.common.settings}</span>
          </Link>
        )}
      </div>
    </header>
  );
}

/** Home bears the product's name; every other screen the name of the one above it. */
function WayUp({ path }: { readonly path: string }) {
  const parent = parentPlace(path);
  if (parent === null) {
    return (
      <p className="app-name">
        <PlumbIcon />
        <span>{words.common.productName}</span>
      </p>
    );
  }
  return (
    <Link className="switch way-up" href={parent.path}>
      <BackIcon />
      <span>{words.common.placeNames[parent.name]}</span>
    </Link>
  );
}
