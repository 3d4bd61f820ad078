import type { FilmShelf, FilmStart, TapeEnd } from '../../contract/filmShelf.ts';
import type { MeasureWorker } from '../measureWorker.ts';

/** What is kept of one live sweep while it goes on: notes of what was measured, and its film. */
export interface LiveFilm {
  /** Its record on the shelf. */
  readonly sweepId: string;
  /**
   * Ends the recording. Resolves with the film's id when some of it is on the shelf, and with
   * whether this browser can record at all.
   */
  end(why?: TapeEnd): Promise<{ readonly filmId: string | null; readonly canRecord: boolean }>;
}

/** Lets the worker keep the sweep that it has just started; null where storage takes nothing. */
export async function startLiveFilm(
  worker: MeasureWorker,
  shelf: FilmShelf,
  start: FilmStart & { readonly isFilmed: boolean },
): Promise<LiveFilm | null> {
  const begun = await shelf.begin(start);
  if (!begun.ok) return null;
  const tape = begun.value;
  let storedPieces = 0;
  await worker.keepNotes({ note: (piece) => tape.note(piece) });
  if (start.isFilmed) {
    await worker.recordFilm({
      async piece(bytes, mimeType) {
        const stored = await tape.take(bytes, mimeType);
        if (stored) storedPieces += 1;
        return stored;
      },
    });
  }
  return {
    sweepId: tape.filmId,
    async end(why = 'over') {
      // A worker that is gone has sent what it had.
      const summary = await worker.endFilm();
      await tape.end(why);
      return {
        filmId: storedPieces > 0 ? tape.filmId : null,
        canRecord: !(summary.ok && summary.value?.ending === 'no-encoder'),
      };
    },
  };
}
