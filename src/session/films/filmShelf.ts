import type { FilmRecord, FilmShelf } from '../../contract/filmShelf.ts';
import type { LogbookTrouble } from '../../contract/logbook.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { DatabaseAccess } from '../logbook/database.ts';
import type { TabLine } from '../logbook/tabLine.ts';
import { createFilmRecords, holdsAny, type FilmRecords } from './filmRecords.ts';
import { filmsBeingRecorded, holdRecordingLock } from './recordingLock.ts';

/** For so long a deleted film can be brought back; then its space is freed. */
const UNDO_FILM_MS = 30_000;

/** Films in the browser's database, beside the logbook. */
export function createFilmShelf(access: DatabaseAccess, tabs?: TabLine): FilmShelf {
  const records = createFilmRecords(access);
  const listeners = new Set<() => void>();
  const tellAll = () => {
    for (const listener of listeners) listener();
  };
  tabs?.onNews(tellAll);
  const told = <T>(outcome: T): T => {
    tabs?.tell();
    tellAll();
    return outcome;
  };
  const change = async (
    filmId: string,
    part: Partial<FilmRecord>,
  ): Promise<Outcome<void, LogbookTrouble>> => {
    const changed = await records.change(filmId, part);
    if (!changed.ok) return changed;
    return told(changed.value ? succeeded(undefined) : failed('not-found', { filmId }));
  };
  const onShelf = async () => {
    const all = await records.all();
    if (!all.ok) return all;
    const shown = all.value.filter(({ removedAt }) => removedAt === null);
    return succeeded(shown.sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0)));
  };

  // What was deleted at an earlier visit is past bringing back.
  void freeDeleted(records, UNDO_FILM_MS);

  return {
    async films() {
      const shown = await onShelf();
      return shown.ok ? succeeded(shown.value.filter(({ pieceCount }) => pieceCount > 0)) : shown;
    },
    async unfinished() {
      const shown = await onShelf();
      if (!shown.ok) return shown;
      const recording = await filmsBeingRecorded();
      return succeeded(
        shown.value.filter(
          (record) => record.entryId === null && holdsAny(record) && !recording.has(record.id),
        ),
      );
    },
    async file(filmId) {
      const found = await records.withPieces(filmId);
      if (!found.ok) return found;
      if (found.value === null) return failed('not-found', { filmId });
      const { record, pieces } = found.value;
      const ending = record.mimeType.includes('webm') ? 'webm' : 'mp4';
      const name = `${record.at.slice(0, 16).replace(':', '-')}.${ending}`;
      return succeeded(new File(pieces, name, { type: record.mimeType }));
    },
    async notes(filmId) {
      const found = await records.withNotes(filmId);
      if (!found.ok) return found;
      if (found.value === null) return failed('not-found', { filmId });
      const { pieces } = found.value;
      return succeeded(pieces.length > 0 ? new Blob(pieces) : null);
    },
    async begin({ wheelId, setup, assumed }) {
      const record: FilmRecord = {
        id: crypto.randomUUID(),
        at: new Date().toISOString(),
        wheelId,
        setup,
        assumed: [...assumed],
        mimeType: '',
        sizeBytes: 0,
        pieceCount: 0,
        entryId: null,
        removedAt: null,
      };
      const release = await holdRecordingLock(record.id);
      const stored = await records.put(record, []);
      if (!stored.ok) {
        release();
        return stored;
      }
      let noting: Promise<unknown> = Promise.resolve();
      return succeeded({
        filmId: record.id,
        take: async (piece, mimeType) => (await records.addPiece(record.id, piece, mimeType)).ok,
        note(piece) {
          const noted = records.addNotes(record.id, piece).then(({ ok }) => ok);
          noting = noted;
          return noted;
        },
        async end(why) {
          await noting;
          release();
          await records.end(record.id, why);
          told(undefined);
        },
      });
    },
    async putIn(record, film, notes = null) {
      const pieces = film.size > 0 ? [film] : [];
      const { notes: said, ...rest } = record;
      const whole = { ...rest, sizeBytes: film.size, pieceCount: pieces.length };
      if (!said || !notes) return told(await records.put(whole, pieces));
      const kept = { ...said, sizeBytes: notes.size, pieceCount: 1 };
      return told(await records.put({ ...whole, notes: kept }, pieces, [notes]));
    },
    async link(filmId, entryId) {
      const settled = await records.settle(filmId, entryId);
      if (!settled.ok) return settled;
      return told(settled.value ? succeeded(undefined) : failed('not-found', { filmId }));
    },
    async remove(filmId) {
      const removed = await change(filmId, { removedAt: new Date().toISOString() });
      if (removed.ok) setTimeout(() => void freeDeleted(records, UNDO_FILM_MS), UNDO_FILM_MS + 500);
      return removed;
    },
    restore: (filmId) => change(filmId, { removedAt: null }),
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

async function freeDeleted(records: FilmRecords, afterMs: number): Promise<void> {
  const all = await records.all();
  if (!all.ok) return;
  const limit = new Date(Date.now() - afterMs).toISOString();
  const gone = all.value.filter(({ removedAt }) => removedAt !== null && removedAt < limit);
  for (const { id } of gone) await records.free(id);
}
