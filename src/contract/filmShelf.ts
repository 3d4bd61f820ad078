import * as v from 'valibot';

import type { LogbookTrouble } from './logbook.ts';
import type { Outcome } from './outcome.ts';
import { KeptNotesSchema, type NotePiece } from './sweepNotes.ts';
import { SetupSchema, type SweepSetup } from './setup.ts';

/**
 * Films of sweeps and the notes of what was measured in them, kept piece by piece while they are
 * recorded. The record is written when its sweep starts: it is the journal of a sweep that has not
 * come to its reading yet. Where no film is recorded it has notes alone, and goes with them once the
 * reading is kept.
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
  /** What was noted of the sweep; missing where nothing was, and once its reading is kept. */
  notes: v.optional(KeptNotesSchema),
  /** The reading made from it; null as long as there is none. */
  entryId: v.nullable(id),
  /** Set when the person left the sweep before its reading: nobody need be told that it broke off. */
  stoppedAt: v.optional(instant),
  /** Set when the person deleted it; for a while it can be brought back. */
  removedAt: v.nullable(instant),
});
export type FilmRecord = v.InferOutput<typeof FilmRecordSchema>;

export interface FilmStart {
  readonly wheelId: string | null;
  readonly setup: SweepSetup;
  readonly assumed: readonly string[];
}

/** `stopped`: the person left the sweep; `over`: its reading follows, or it broke off. */
export type TapeEnd = 'over' | 'stopped';

/** Takes the pieces of one film that is being recorded. */
interface FilmTape {
  readonly filmId: string;
  /** Resolves once the piece is stored; false when storage takes no more of this film. */
  take(piece: Uint8Array<ArrayBuffer>, mimeType: string): Promise<boolean>;
  /** Resolves once the notes are stored; false when storage takes no more of them. */
  note(piece: NotePiece): Promise<boolean>;
  /** No more pieces will come. A record without any is taken off the shelf. */
  end(why: TapeEnd): Promise<void>;
}

export interface FilmShelf {
  /** All films that were not deleted, newest first. */
  films(): Promise<Outcome<readonly FilmRecord[], LogbookTrouble>>;
  /** Sweeps with a film or notes that have no reading and are not being recorded now, in whichever tab; newest first. */
  unfinished(): Promise<Outcome<readonly FilmRecord[], LogbookTrouble>>;
  /** A film as one file, as far as it was recorded. */
  file(filmId: string): Promise<Outcome<File, LogbookTrouble>>;
  /** The notes of a sweep as one file; null when it has none. */
  notes(filmId: string): Promise<Outcome<Blob | null, LogbookTrouble>>;
  /** Starts a film; its record is in storage when the promise resolves. */
  begin(start: FilmStart): Promise<Outcome<FilmTape, LogbookTrouble>>;
  /** Puts a whole film, or notes, or both on the shelf, with a record that says all of it. */
  putIn(
    record: FilmRecord,
    film: Blob,
    notes?: Blob | null,
  ): Promise<Outcome<void, LogbookTrouble>>;
  /** Says which reading was made of it, now that this is stored: the notes have done their work. */
  link(filmId: string, entryId: string): Promise<Outcome<void, LogbookTrouble>>;
  /** Deletes a film. For half a minute `restore` brings it back. */
  remove(filmId: string): Promise<Outcome<void, LogbookTrouble>>;
  restore(filmId: string): Promise<Outcome<void, LogbookTrouble>>;
  onChange(changed: () => void): () => void;
}
