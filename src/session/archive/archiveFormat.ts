import type { FilmRecord } from '../../contract/filmShelf.ts';
import type { StandRecord, WheelRecord } from '../../contract/logbook.ts';

/**
 * A logbook in one file: a zip archive of
 *
 * - `logbook.json`: {@link LogbookJson};
 * - `traces.f32`: the points of all traces, little-endian 32-bit floats, in the order of the sweeps
 *   in `logbook.json`, `3 × pointCount` of them for each sweep that has a trace;
 * - `films/ID`: each film that is taken along, as it was recorded; empty where a sweep that broke off
 *   has none;
 * - `notes/ID`: the notes of such a sweep, where its record tells of any.
 *
 * A later form gets a new number and a step that leads this one over to it.
 */
export const ARCHIVE_FORMAT = 'tiltsweep.logbook/1';
export const LOGBOOK_FILE = 'logbook.json';
export const TRACES_FILE = 'traces.f32';
export const notesFile = (filmId: string) => `notes/${filmId}`;
export const filmFile = (filmId: string) => `films/${filmId}`;

export interface LogbookJson {
  readonly format: typeof ARCHIVE_FORMAT;
  /** ISO 8601, UTC. */
  readonly madeAt: string;
  readonly stand: StandRecord | null;
  readonly wheels: readonly WheelRecord[];
  /** Entries in order of time; a sweep's trace is its head only. */
  readonly entries: readonly unknown[];
  /** Records of the films in the archive. */
  readonly films: readonly FilmRecord[];
}

/** The order of bytes in a file's traces is this one; nearly every machine has it. */
export const IS_LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;
