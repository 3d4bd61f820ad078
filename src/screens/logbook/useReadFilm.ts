import { useCallback } from 'react';

import type { FilmRecord } from '../../contract/filmShelf.ts';
import { useApp } from '../shell/appContext.ts';

/**
 * Reads a film of the shelf again, with the setup that it was recorded with and, for a check sweep,
 * the reading before it. Resolves to false when the film is not in this browser.
 */
export function useReadFilm(): (film: FilmRecord) => Promise<boolean> {
  const { shelf, logbook, films } = useApp();
  return useCallback(
    async ({ id, at, wheelId, setup, assumed }) => {
      const film = await shelf.file(id);
      if (!film.ok) return false;
      const files = [film.value, jsonFile('sweep.setup.json', setup)];
      if (setup.after) {
        const earlier = await logbook.entry(setup.after.sweep);
        if (earlier.ok && earlier.value.kind === 'sweep') {
          files.push(jsonFile('earlier.reading.json', earlier.value.reading));
        }
      }
      films.open(files, { wheelId, assumed, film: { filmId: id, sweptAt: at } });
      return true;
    },
    [shelf, logbook, films],
  );
}

function jsonFile(name: string, value: unknown): File {
  return new File([JSON.stringify(value)], name, { type: 'application/json' });
}
