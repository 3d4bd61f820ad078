import { useCallback, useState } from 'react';

import { LANGUAGES, preferredLanguage, setLanguage, type Language } from '../words/words.ts';
import { readOneOf, storedValue, storeValue } from './preference.ts';

const LANGUAGE_KEY = 'language';

function wantedLanguage(): Language {
  return (
    readOneOf(...LANGUAGES)(storedValue(LANGUAGE_KEY)) ?? preferredLanguage(navigator.languages)
  );
}

/** Before anything is drawn: the language chosen once, else the browser's. */
export async function applyStoredLanguage(): Promise<void> {
  await changeLanguage(wantedLanguage());
}

async function changeLanguage(next: Language): Promise<void> {
  // A language that cannot be fetched must not keep the program from opening.
  await setLanguage(next).catch(() => setLanguage('en'));
  document.documentElement.lang = next;
}

export function useLanguage(): [Language, (next: Language) => void] {
  const [shown, setShown] = useState(wantedLanguage);
  const choose = useCallback((next: Language) => {
    storeValue(LANGUAGE_KEY, next);
    void changeLanguage(next).then(() => setShown(next));
  }, []);
  return [shown, choose];
}
