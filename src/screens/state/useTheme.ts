import { useEffect, useSyncExternalStore } from 'react';

import { readOneOf, usePreference } from './preference.ts';

export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];
const CONTRASTS = ['system', 'more'] as const;
export type Contrast = (typeof CONTRASTS)[number];

const DARK_QUERY = '(prefers-color-scheme: dark)';
const MORE_CONTRAST_QUERY = '(prefers-contrast: more)';

/** The system's wish until the person chooses; what holds is set on the page for the style sheet. */
export function useTheme(): [Theme, (theme: Theme) => void] {
  const [chosen, choose] = usePreference<Theme>('theme', 'system', readOneOf(...THEMES));
  const systemDark = useMediaQuery(DARK_QUERY);
  const shown = chosen === 'system' ? (systemDark ? 'dark' : 'light') : chosen;
  useEffect(() => {
    document.documentElement.dataset['theme'] = shown;
  }, [shown]);
  return [chosen, choose];
}

/** Stronger lines and no soft ink, by the system's wish or the person's. */
export function useContrast(): [Contrast, (contrast: Contrast) => void] {
  const [chosen, choose] = usePreference<Contrast>('contrast', 'system', readOneOf(...CONTRASTS));
  const systemMore = useMediaQuery(MORE_CONTRAST_QUERY);
  const shown = chosen === 'more' || systemMore ? 'more' : 'usual';
  useEffect(() => {
    document.documentElement.dataset['contrast'] = shown;
  }, [shown]);
  return [chosen, choose];
}

function useMediaQuery(text: string): boolean {
  return useSyncExternalStore(
    (onChange) => {
      const query = matchMedia(text);
      query.addEventListener('change', onChange);
      return () => query.removeEventListener('change', onChange);
    },
    () => matchMedia(text).matches,
  );
}
