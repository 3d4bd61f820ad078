import { Suspense, lazy, useState } from 'react';

import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { OnOffSwitch } from '../parts/OnOffSwitch.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import { CautionList } from '../start/CautionList.tsx';
import type { Settings } from '../state/useSettings.ts';
import { THEMES } from '../state/useTheme.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { UNITS } from '../words/displayUnits.ts';
import { LANGUAGES, words } from '../words/words.ts';
import { BrowserLacks } from './BrowserLacks.tsx';
import './settings.css';

/** A long list that few open. */
const LicenceList = lazy(() =>
  import('./LicenceList.tsx').then((module) => ({ default: module.LicenceList })),
);

/** What a person chooses once. */
export default function SettingsScreen() {
  const { settings } = useApp();
  const text = words.settings;
  return (
    <div className="settings">
      <ScreenTitle>{text.title}</ScreenTitle>
      <div className="fields">
        <ReadingSettings settings={settings} />
        <HearingSettings settings={settings} />
        <section className="group">
          <h2>{text.groups.keeping}</h2>
          <OnOffSwitch
            label={text.keepFilms}
            help={text.keepFilmsHelp}
            isOn={settings.keepFilms}
            onSwitch={settings.setKeepFilms}
          />
        </section>
      </div>
      <div className="fields">
        <section className="group">
          <h2>{text.safety}</h2>
          <CautionList />
        </section>
        <BrowserLacks />
        <About />
      </div>
    </div>
  );
}

function ReadingSettings({ settings }: { readonly settings: Settings }) {
  const text = words.settings;
  return (
    <section className="group">
      <h2>{text.groups.reading}</h2>
      <ChoiceTiles
        label={text.language}
        tiles={LANGUAGES.map((value) => ({ value, word: text.languages[value] }))}
        chosen={settings.language}
        onChoose={settings.setLanguage}
      />
      <ChoiceTiles
        label={text.units}
        tiles={UNITS.map((value) => ({
          value,
          word: text.unitNames[value],
          note: text.unitExamples[value],
        }))}
        chosen={settings.units}
        onChoose={settings.setUnits}
      />
      <ChoiceTiles
        label={text.theme}
        tiles={THEMES.map((value) => ({ value, word: text.themes[value] }))}
        chosen={settings.theme}
        onChoose={settings.setTheme}
      />
      <OnOffSwitch
        label={text.contrast}
        help={text.contrastHelp}
        isOn={settings.contrast === 'more'}
        onSwitch={(isOn) => settings.setContrast(isOn ? 'more' : 'system')}
      />
    </section>
  );
}

function HearingSettings({ settings }: { readonly settings: Settings }) {
  const text = words.settings;
  return (
    <section className="group">
      <h2>{text.groups.hearing}</h2>
      <OnOffSwitch
        label={text.sound}
        help={text.soundHelp}
        isOn={settings.hearing.tones}
        onSwitch={(isOn) => {
          unlockHearing();
          settings.setSound(isOn);
        }}
      />
      <OnOffSwitch
        label={text.voice}
        help={text.voiceHelp}
        isOn={settings.hearing.voice}
        onSwitch={(isOn) => {
          unlockHearing();
          settings.setVoice(isOn);
        }}
      />
    </section>
  );
}

function About() {
  const [isOpen, setOpen] = useState(false);
  const text = words.settings;
  return (
    <section className="group">
      <h2>{text.groups.about}</h2>
      <p>{text.aboutText}</p>
      <details className="drawer" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{text.licences}</summary>
        <div className="settings-licences">
          {isOpen && (
            <Suspense fallback={null}>
              <LicenceList />
            </Suspense>
          )}
        </div>
      </details>
    </section>
  );
}
