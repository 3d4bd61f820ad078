import { useCallback, useState } from 'react';

import { draftFromStored, PROPOSED_DRAFT, type SetupDraft } from '../setup/setupDraft.ts';
import type { Units } from '../words/displayUnits.ts';
import { readBoolean, storedValue, storeValue, usePreference } from './preference.ts';
import { useLanguage } from './useLanguage.ts';
import { useContrast, useTheme, type Contrast, type Theme } from './useTheme.ts';
import { useUnits } from './useUnits.ts';
import type { Language } from '../words/words.ts';

/** What is heard in this moment: the person's choices, and nothing while all is silent. */
export interface Hearing {
  readonly tones: boolean;
  readonly voice: boolean;
}

/** What a person has chosen once and should not have to choose again. */
export interface Settings {
  readonly language: Language;
  readonly setLanguage: (language: Language) => void;
  readonly theme: Theme;
  readonly setTheme: (theme: Theme) => void;
  readonly contrast: Contrast;
  readonly setContrast: (contrast: Contrast) => void;
  /** Tones at the events of a sweep. */
  readonly sound: boolean;
  readonly setSound: (sound: boolean) => void;
  /** What to do next, spoken. */
  readonly voice: boolean;
  readonly setVoice: (voice: boolean) => void;
  readonly hearing: Hearing;
  /** One touch for silence, and one for what was heard before; both are on when neither was. */
  readonly switchHearing: () => void;
  /** Whether the films of camera sweeps stay on the film shelf. */
  readonly keepFilms: boolean;
  readonly setKeepFilms: (keep: boolean) => void;
  readonly units: Units;
  readonly setUnits: (units: Units) => void;
  readonly cautionsSeen: boolean;
  readonly rememberCautionsSeen: () => void;
  readonly draft: SetupDraft;
  readonly rememberDraft: (draft: SetupDraft) => void;
}

const DRAFT_KEY = 'setupDraft';

function useHearing() {
  const [sound, chooseSound] = usePreference('sound', true, readBoolean);
  const [voice, chooseVoice] = usePreference('voice', true, readBoolean);
  const [silent, setSilent] = usePreference('silent', false, readBoolean);
  const hearing = { tones: sound && !silent, voice: voice && !silent };
  /** Who switches something on wants to hear it. */
  const choosing = (choose: (on: boolean) => void) => (on: boolean) => {
    choose(on);
    if (on) setSilent(false);
  };
  const switchHearing = () => {
    if (hearing.tones || hearing.voice) return setSilent(true);
    setSilent(false);
    if (!sound && !voice) {
      chooseSound(true);
      chooseVoice(true);
    }
  };
  return {
    sound,
    setSound: choosing(chooseSound),
    voice,
    setVoice: choosing(chooseVoice),
    hearing,
    switchHearing,
  };
}

export function useSettings(): Settings {
  const [language, setLanguage] = useLanguage();
  const [theme, setTheme] = useTheme();
  const [contrast, setContrast] = useContrast();
  const heard = useHearing();
  const [keepFilms, setKeepFilms] = usePreference('keepFilms', true, readBoolean);
  const [units, setUnits] = useUnits();
  const [cautionsSeen, setCautionsSeen] = usePreference('cautionsSeen', false, readBoolean);
  const [draft, setDraft] = useState(
    () => draftFromStored(storedValue(DRAFT_KEY)) ?? PROPOSED_DRAFT,
  );
  const rememberDraft = useCallback((next: SetupDraft) => {
    setDraft(next);
    storeValue(DRAFT_KEY, next);
  }, []);
  return {
    language,
    setLanguage,
    theme,
    setTheme,
    contrast,
    setContrast,
    ...heard,
    keepFilms,
    setKeepFilms,
    units,
    setUnits,
    cautionsSeen,
    rememberCautionsSeen: () => setCautionsSeen(true),
    draft,
    rememberDraft,
  };
}
