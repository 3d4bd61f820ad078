import * as v from 'valibot';

import { FilmRecordSchema, type FilmRecord } from '../../contract/filmShelf.ts';
import type { Kept } from '../logbook/recordStore.ts';
import type { DatabaseAccess } from '../logbook/database.ts';
import { wholeOrNothing } from '../logbook/wholeOrNothing.ts';

/** Film records and their pieces as they lie in the database. */
export interface FilmRecords {
  all(): Kept<FilmRecord[]>;
  withPieces(filmId: string): Kept<{ record: FilmRecord; pieces: Blob[] } | null>;
  put(record: FilmRecord, pieces: readonly Blob[]): Kept<void>;
  /** Stores the next piece and counts it in the record, in one step. */
  addPiece(filmId: string, piece: Uint8Array<ArrayBuffer>, mimeType: string): Kept<void>;
  /** False when there is no such film. */
  change(filmId: string, part: Partial<FilmRecord>): Kept<boolean>;
  dropIfEmpty(filmId: string): Kept<void>;
  free(filmId: string): Kept<void>;
}

const BOTH = ['films', 'filmPieces'] as const;
const ON_DISK = { durability: 'strict' } as const;

export function createFilmRecords(access: DatabaseAccess): FilmRecords {
  const free = (filmId: string) =>
    access.run(async (db) => {
      const writing = db.transaction(BOTH, 'readwrite', ON_DISK);
      await wholeOrNothing(writing, async () => {
        await Promise.all([
          writing.objectStore('films').delete(filmId),
          writing.objectStore('filmPieces').delete(piecesOf(filmId)),
        ]);
      });
    });
  return {
    all: () => access.run(async (db) => (await db.getAll('films')).flatMap(readable)),
    withPieces: (filmId) =>
      access.run(async (db) => {
        const reading = db.transaction(BOTH);
        const [row, pieces] = await Promise.all([
          reading.objectStore('films').get(filmId),
          reading.objectStore('filmPieces').getAll(piecesOf(filmId)),
        ]);
        const [record] = readable(row);
        return record ? { record, pieces } : null;
      }),
    put: (record, pieces) =>
      access.run(async (db) => {
        const writing = db.transaction(BOTH, 'readwrite', ON_DISK);
        const store = writing.objectStore('filmPieces');
        await wholeOrNothing(writing, async () => {
          await Promise.all([
            writing.objectStore('films').put(record),
            store.delete(piecesOf(record.id)),
            ...pieces.map((piece, number) => store.put(piece, [record.id, number])),
          ]);
        });
      }),
    addPiece: (filmId, piece, mimeType) =>
      access.run(async (db) => {
        const writing = db.transaction(BOTH, 'readwrite', ON_DISK);
        await wholeOrNothing(writing, async () => {
          const [record] = readable(await writing.objectStore('films').get(filmId));
          if (!record) throw new Error('a piece of a film that is not on the shelf');
          const { pieceCount, sizeBytes } = record;
          const longer = { pieceCount: pieceCount + 1, sizeBytes: sizeBytes + piece.byteLength };
          await Promise.all([
            writing.objectStore('films').put({ ...record, mimeType, ...longer }),
            // As a Blob the browser keeps it out of memory when the film is put together.
            writing.objectStore('filmPieces').put(new Blob([piece]), [filmId, pieceCount]),
          ]);
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
    dropIfEmpty: (filmId) =>
      access.run(async (db) => {
        const [record] = readable(await db.get('films', filmId));
        if (record?.pieceCount === 0) await db.delete('films', filmId);
      }),
    free,
  };
}

function readable(row: unknown): FilmRecord[] {
  const read = v.safeParse(FilmRecordSchema, row);
  return read.success ? [read.output] : [];
}

function piecesOf(filmId: string): IDBKeyRange {
  return IDBKeyRange.bound([filmId, 0], [filmId, Number.MAX_SAFE_INTEGER]);
}
