import * as v from 'valibot';

import type { LogbookTrouble } from './logbook.ts';
import type { Outcome } from './outcome.ts';
import { SetupSchema, type SweepSetup } from './setup.ts';

/**
 * Films of sweeps, kept piece by piece while they are recorded. A film's record is written when its
 * sweep starts: it is the journal of a sweep that has not come to its reading yet.
 */

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(64));
const instant = v.pipe(v.string(), v.isoTimestamp());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));

export const FilmRecordSchema = v.object({
  id,
  /** When the sweep began. */
  at: instant,
  /** The wheel that the sweep was started for; null when it was to be found by its setup. */
  wheelId: v.nullable(id),
  setup: SetupSchema,
  /** Names of the setup's values that were assumed. */
  assumed: v.pipe(v.array(v.pipe(v.string(), v.maxLength(200))), v.maxLength(20)),
  mimeType: v.pipe(v.string(), v.maxLength(100)),
  sizeBytes: count,
  pieceCount: count,
  /** The reading made from it; null as long as there is none. */
  entryId: v.nullable(id),
  /** Set when the person deleted it; for a while it can be brought back. */
  removedAt: v.nullable(instant),
});
export type FilmRecord = v.InferOutput<typeof FilmRecordSchema>;

export interface FilmStart {
  readonly wheelId: string | null;
  readonly setup: SweepSetup;
  readonly assumed: readonly string[];
}

/** Takes the pieces of one film that is being recorded. */
interface FilmTape {
  readonly filmId: string;
  /** Resolves once the piece is stored; false when storage takes no more of this film. */
  take(piece: Uint8Array<ArrayBuffer>, mimeType: string): Promise<boolean>;
  /** No more pieces will come. A film without any is taken off the shelf. */
  end(): Promise<void>;
}

export interface FilmShelf {
  /** All that were not deleted, newest first. */
  films(): Promise<Outcome<readonly FilmRecord[], LogbookTrouble>>;
  /** Those that have no reading and are not being recorded now, in whichever tab; newest first. */
  unfinished(): Promise<Outcome<readonly FilmRecord[], LogbookTrouble>>;
  /** A film as one file, as far as it was recorded. */
  file(filmId: string): Promise<Outcome<File, LogbookTrouble>>;
  /** Starts a film; its record is in storage when the promise resolves. */
  begin(start: FilmStart): Promise<Outcome<FilmTape, LogbookTrouble>>;
  /** Puts a whole film on the shelf, with a record that says all of it. */
  putIn(record: FilmRecord, film: Blob): Promise<Outcome<void, LogbookTrouble>>;
  /** Notes which reading was made from it. */
  link(filmId: string, entryId: string): Promise<Outcome<void, LogbookTrouble>>;
  /** Deletes a film. For half a minute `restore` brings it back. */
  remove(filmId: string): Promise<Outcome<void, LogbookTrouble>>;
  restore(filmId: string): Promise<Outcome<void, LogbookTrouble>>;
  onChange(changed: () => void): () => void;
}
