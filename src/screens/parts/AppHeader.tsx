import type { Settings } from '../state/useSettings.ts';
import { unlockTones } from '../sweep/tones.ts';
import { commonWords } from '../words/commonWords.ts';
import { readingWords } from '../words/readingWords.ts';
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
        <span>{commonWords.productName}</span>
      </p>
      <div className="app-switches">
        <fieldset className="unit-switch">
          <legend className="unseen">{readingWords.unitLabel}</legend>
          {(['g', 'oz'] as const).map((choice) => (
            <label key={choice}>
              <input
                type="radio"
                name="massUnit"
                value={choice}
                checked={unit === choice}
                onChange={() => settings.setUnit(choice)}
                aria-label={choice === 'g' ? readingWords.unitGrams : readingWords.unitOunces}
              />
              <span aria-hidden="true">{choice}</span>
            </label>
          ))}
        </fieldset>
        <button type="button" className="switch" aria-pressed={sound} onClick={toggleSound}>
          {sound ? <SoundOnIcon /> : <SoundOffIcon />}
          <span className="switch-word">{sound ? commonWords.soundOn : commonWords.soundOff}</span>
        </button>
        <button
          type="button"
          className="switch"
          aria-label={theme === 'light' ? commonWords.showDark : commonWords.showLight}
          onClick={() => settings.setTheme(otherTheme)}
        >
          {theme === 'light' ? <MoonIcon /> : <SunIcon />}
          <span className="switch-word" aria-hidden="true">
            {theme === 'light' ? commonWords.dark : commonWords.light}
          </span>
        </button>
      </div>
    </header>
  );
}
