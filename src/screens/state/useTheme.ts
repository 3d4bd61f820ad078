import { useEffect, useSyncExternalStore } from 'react';

import { readOneOf, usePreference } from './preference.ts';

export type Theme = 'light' | 'dark';

const DARK_QUERY = '(prefers-color-scheme: dark)';

/** The system's wish until the person chooses; the choice is set on the page for the style sheet. */
export function useTheme(): [Theme, (theme: Theme) => void] {
  const [chosen, choose] = usePreference<Theme | 'system'>(
    'theme',
    'system',
    readOneOf('light', 'dark'),
  );
  const systemDark = useSyncExternalStore(watchSystem, () => matchMedia(DARK_QUERY).matches);
  const theme = chosen === 'system' ? (systemDark ? 'dark' : 'light') : chosen;
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  return [theme, choose];
}

function watchSystem(onChange: () => void): () => void {
  const query = matchMedia(DARK_QUERY);
  query.addEventListener('change', onChange);
  return () => query.removeEventListener('change', onChange);
}
