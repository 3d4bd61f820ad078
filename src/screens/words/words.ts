import { en, type Words } from './en/index.ts';

/**
 * Every sentence on the screens, in the language in use.
 *
 * A language is a plain object of the same shape as English, so that the compiler names what a
 * translation lacks; plurals and inserted values are functions. `words` is a live binding: after
 * {@link setLanguage} every reader gets the new language, and the screens are drawn anew.
 */
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

export let words: Words = en;
export let language: Language = 'en';

/** Loads a language and puts it in use. English is always there; others come when asked for. */
export async function setLanguage(next: Language): Promise<void> {
  words = next === 'de' ? (await import('./de/index.ts')).de : en;
  language = next;
}

/** The first of the browser's languages that there are words for; English when none is. */
export function preferredLanguage(wished: readonly string[]): Language {
  for (const tag of wished) {
    const found = LANGUAGES.find((known) => tag.toLowerCase().startsWith(known));
    if (found) return found;
  }
  return 'en';
}
