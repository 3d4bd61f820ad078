import { createContext, useContext } from 'react';

import type { FilmShelf } from '../../contract/filmShelf.ts';
import type { Logbook } from '../../contract/logbook.ts';
import type { SweepSession } from '../../contract/session.ts';
import type { AppUpdate } from '../../session/appUpdate.ts';
import type { ReadingKeeper } from '../../session/readingKeeper.ts';
import type { NoticeStreak } from '../state/refusalAdvice.ts';
import type { Settings } from '../state/useSettings.ts';
import type { Films } from './useFilms.ts';

/** What every screen may use; made once when the page opens. */
export interface AppParts {
  readonly session: SweepSession;
  readonly logbook: Logbook;
  /** Films of camera sweeps. */
  readonly shelf: FilmShelf;
  readonly keeper: ReadingKeeper;
  readonly update: AppUpdate;
}

export interface AppContextValue extends AppParts {
  readonly settings: Settings;
  readonly films: Films;
  /** How often in a row the same thing went wrong, over all screens. */
  readonly streak: NoticeStreak;
}

export const AppContext = createContext<AppContextValue | null>(null);

export function useApp(): AppContextValue {
  const app = useContext(AppContext);
  if (app === null) throw new Error('a screen outside of the app');
  return app;
}
