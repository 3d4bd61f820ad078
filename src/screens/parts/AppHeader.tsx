import type { Settings } from '../state/useSettings.ts';
import { unlockTones } from '../sweep/tones.ts';
import { words } from '../words/words.ts';
import { MoonIcon, PlumbIcon, SoundOffIcon, SoundOnIcon, SunIcon } from './icons.tsx';

/** Name on the left; unit, sound and light or dark on the right, the same on every screen. */
export function AppHeader({ settings }: { readonly settings: Settings }) {
  const { theme, sound, unit } = settings;
  const otherTheme = theme === 'light' ? 'dark' : 'light';
  const toggleSound = () => {
    unlockTones();
    settings.setSound(!sound);
  };
  return (
    <header className="app-header">
      <p className="app-name">
        <PlumbIcon />
        <span>{words.common.productName}</span>
      </p>
      <div className="app-switches">
        <fieldset className="unit-switch">
          <legend className="unseen">{words.reading.unitLabel}</legend>
          {(['g', 'oz'] as const).map((choice) => (
            <label key={choice}>
              <input
                type="radio"
                name="massUnit"
                value={choice}
                checked={unit === choice}
                onChange={() => settings.setUnit(choice)}
                aria-label={choice === 'g' ? words.reading.unitGrams : words.reading.unitOunces}
              />
              <span aria-hidden="true">{choice}</span>
            </label>
          ))}
        </fieldset>
        <button type="button" className="switch" aria-pressed={sound} onClick={toggleSound}>
          {sound ? <SoundOnIcon /> : <SoundOffIcon />}
          <span className="switch-word">
            {sound ? words.common.soundOn : words.common.soundOff}
          </span>
        </button>
        <button
          type="button"
          className="switch"
          aria-label={theme === 'light' ? words.common.showDark : words.common.showLight}
          onClick={() => settings.setTheme(otherTheme)}
        >
          {theme === 'light' ? <MoonIcon /> : <SunIcon />}
          <span className="switch-word" aria-hidden="true">
            {theme === 'light' ? words.common.dark : words.common.light}
          </span>
        </button>
      </div>
    </header>
  );
}
