import { useCallback, useState } from 'react';

import { draftFromStored, PROPOSED_DRAFT, type SetupDraft } from '../setup/setupDraft.ts';
import type { MassUnit } from '../words/numbers.ts';
import { readBoolean, readOneOf, storedValue, storeValue, usePreference } from './preference.ts';
import { useLanguage } from './useLanguage.ts';
import { useTheme, type Theme } from './useTheme.ts';
import type { Language } from '../words/words.ts';

/** What a person has chosen once and should not have to choose again. */
export interface Settings {
  readonly language: Language;
  readonly setLanguage: (language: Language) => void;
  readonly theme: Theme;
  readonly setTheme: (theme: Theme) => void;
  readonly sound: boolean;
  readonly setSound: (sound: boolean) => void;
  readonly unit: MassUnit;
  readonly setUnit: (unit: MassUnit) => void;
  readonly cautionsSeen: boolean;
  readonly rememberCautionsSeen: () => void;
  readonly draft: SetupDraft;
  readonly rememberDraft: (draft: SetupDraft) => void;
}

const DRAFT_KEY = 'setupDraft';

export function useSettings(): Settings {
  const [language, setLanguage] = useLanguage();
  const [theme, setTheme] = useTheme();
  const [sound, setSound] = usePreference('sound', true, readBoolean);
  const [unit, setUnit] = usePreference<MassUnit>('massUnit', 'g', readOneOf('g', 'oz'));
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
    sound,
    setSound,
    unit,
    setUnit,
    cautionsSeen,
    rememberCautionsSeen: () => setCautionsSeen(true),
    draft,
    rememberDraft,
  };
}
