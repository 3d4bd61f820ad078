import * as v from 'valibot';

import { FilmRecordSchema, type FilmRecord, type TapeEnd } from '../../contract/filmShelf.ts';
import type { NotePiece } from '../../contract/sweepNotes.ts';
import type { Kept } from '../logbook/recordStore.ts';
import type { DatabaseAccess } from '../logbook/database.ts';
import { wholeOrNothing } from '../logbook/wholeOrNothing.ts';

/** Film records, their pieces and notes as they lie in the database. */
export interface FilmRecords {
  all(): Kept<FilmRecord[]>;
  withPieces(filmId: string): Kept<{ record: FilmRecord; pieces: Blob[] } | null>;
  withNotes(filmId: string): Kept<{ record: FilmRecord; pieces: Blob[] } | null>;
  put(record: FilmRecord, pieces: readonly Blob[], notes?: readonly Blob[]): Kept<void>;
  /** Stores the next piece and counts it in the record, in one step. */
  addPiece(filmId: string, piece: Uint8Array<ArrayBuffer>, mimeType: string): Kept<void>;
  /** The same for notes; refused once the sweep has its reading. */
  addNotes(filmId: string, piece: NotePiece): Kept<void>;
  /** Lets the notes go, and the record with them when there is no film. False when there is none. */
  settle(filmId: string, entryId: string): Kept<boolean>;
  /** False when there is no such film. */
  change(filmId: string, part: Partial<FilmRecord>): Kept<boolean>;
  /** No more comes: what is empty goes, and what was left on purpose is marked so. */
  end(filmId: string, why: TapeEnd): Kept<void>;
  free(filmId: string): Kept<void>;
}

const ALL = ['films', 'filmPieces', 'sweepNotes'] as const;
const ON_DISK = { durability: 'strict' } as const;

export function createFilmRecords(access: DatabaseAccess): FilmRecords {
  const piecesIn = (store: 'filmPieces' | 'sweepNotes') => (filmId: string) =>
    access.run(async (db) => {
      const reading = db.transaction(ALL);
      const [row, pieces] = await Promise.all([
        reading.objectStore('films').get(filmId),
        reading.objectStore(store).getAll(piecesOf(filmId)),
      ]);
      const [record] = readable(row);
      return record ? { record, pieces } : null;
    });
  /** Stores a piece with the record that counts it, in one step. */
  const add = (
    store: 'filmPieces' | 'sweepNotes',
    filmId: string,
    bytes: Uint8Array<ArrayBuffer>,
    counted: (record: FilmRecord) => { readonly record: FilmRecord; readonly number: number },
  ) =>
    access.run(async (db) => {
      const writing = db.transaction(ALL, 'readwrite', ON_DISK);
      await wholeOrNothing(writing, async () => {
        const [before] = readable(await writing.objectStore('films').get(filmId));
        if (!before) throw new Error('a piece of a film that is not on the shelf');
        const { record, number } = counted(before);
        await Promise.all([
          writing.objectStore('films').put(record),
          // As a Blob the browser keeps it out of memory when the film is put together.
          writing.objectStore(store).put(new Blob([bytes]), [filmId, number]),
        ]);
      });
    });
  return {
    all: () => access.run(async (db) => (await db.getAll('films')).flatMap(readable)),
    withPieces: piecesIn('filmPieces'),
    withNotes: piecesIn('sweepNotes'),
    put: (record, pieces, notes = []) =>
      access.run(async (db) => {
        const writing = db.transaction(ALL, 'readwrite', ON_DISK);
        const films = writing.objectStore('filmPieces');
        const noted = writing.objectStore('sweepNotes');
        await wholeOrNothing(writing, async () => {
          await Promise.all([
            writing.objectStore('films').put(record),
            films.delete(piecesOf(record.id)),
            noted.delete(piecesOf(record.id)),
            ...pieces.map((piece, number) => films.put(piece, [record.id, number])),
            ...notes.map((piece, number) => noted.put(piece, [record.id, number])),
          ]);
        });
      }),
    addPiece: (filmId, piece, mimeType) =>
      add('filmPieces', filmId, piece, (record) => {
        const { pieceCount: number, sizeBytes } = record;
        const longer = { pieceCount: number + 1, sizeBytes: sizeBytes + piece.byteLength };
        return { record: { ...record, mimeType, ...longer }, number };
      }),
    addNotes: (filmId, { bytes, coveredDeg }) =>
      add('sweepNotes', filmId, bytes, (record) => {
        if (record.entryId !== null) throw new Error('notes of a sweep that has its reading');
        const { pieceCount: number, sizeBytes } = record.notes ?? NO_NOTES;
        const longer = { pieceCount: number + 1, sizeBytes: sizeBytes + bytes.byteLength };
        return { record: { ...record, notes: { ...longer, coveredDeg } }, number };
      }),
    settle: (filmId, entryId) =>
      access.run(async (db) => {
        const writing = db.transaction(ALL, 'readwrite', ON_DISK);
        return wholeOrNothing(writing, async () => {
          const films = writing.objectStore('films');
          const [record] = readable(await films.get(filmId));
          if (!record) return false;
          const { notes: _done, ...film } = record;
          await Promise.all([
            film.pieceCount > 0 ? films.put({ ...film, entryId }) : films.delete(filmId),
            writing.objectStore('sweepNotes').delete(piecesOf(filmId)),
          ]);
          return true;
        });
      }),
    change: (filmId, part) =>
      access.run(async (db) => {
        const writing = db.transaction('films', 'readwrite', ON_DISK);
        return wholeOrNothing(writing, async () => {
          const [record] = readable(await writing.store.get(filmId));
          if (record) await writing.store.put({ ...record, ...part });
          return record !== undefined;
        });
      }),
    end: (filmId, why) =>
      access.run(async (db) => {
        const writing = db.transaction('films', 'readwrite', ON_DISK);
        await wholeOrNothing(writing, async () => {
          const [record] = readable(await writing.store.get(filmId));
          if (!record) return;
          if (!holdsAny(record)) await writing.store.delete(filmId);
          else if (why === 'stopped') {
            await writing.store.put({ ...record, stoppedAt: new Date().toISOString() });
          }
        });
      }),
    free: (filmId) =>
      access.run(async (db) => {
        const writing = db.transaction(ALL, 'readwrite', ON_DISK);
        await wholeOrNothing(writing, async () => {
          await Promise.all([
            writing.objectStore('films').delete(filmId),
            writing.objectStore('filmPieces').delete(piecesOf(filmId)),
            writing.objectStore('sweepNotes').delete(piecesOf(filmId)),
          ]);
        });
      }),
  };
}

const NO_NOTES = { pieceCount: 0, sizeBytes: 0 };

/** True when there is anything of the sweep that can be read. */
export function holdsAny({ pieceCount, notes }: FilmRecord): boolean {
  return pieceCount > 0 || (notes !== undefined && notes.pieceCount > 0);
}

function readable(row: unknown): FilmRecord[] {
  const read = v.safeParse(FilmRecordSchema, row);
  return read.success ? [read.output] : [];
}

function piecesOf(filmId: string): IDBKeyRange {
  return IDBKeyRange.bound([filmId, 0], [filmId, Number.MAX_SAFE_INTEGER]);
}
