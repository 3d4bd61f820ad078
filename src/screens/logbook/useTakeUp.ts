import { useCallback } from 'react';

import type { FilmRecord } from '../../contract/filmShelf.ts';
import { useApp } from '../shell/appContext.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';

/** Reads a sweep that broke off, from what the shelf holds of it. */
export function useTakeUp(): (sweep: FilmRecord) => Promise<void> {
  const { shelf, logbook, session } = useApp();
  return useCallback(
    async ({ id, at, wheelId, setup, assumed, pieceCount }) => {
      unlockHearing();
      const notes = await shelf.notes(id);
      const film = pieceCount > 0 ? await shelf.file(id) : null;
      const before = setup.after ? await logbook.entry(setup.after.sweep) : null;
      const earlier = before?.ok && before.value.kind === 'sweep' ? before.value.reading : null;
      const isNotes = film === null;
      await session.takeUp({
        ...{ setup, earlier },
        notes: notes.ok ? notes.value : null,
        film: film?.ok ? film.value : null,
        errand: { wheelId, assumed, film: { filmId: id, sweptAt: at, isNotes } },
      });
    },
    [shelf, logbook, session],
  );
}
