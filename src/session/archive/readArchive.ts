import { inflateSync } from 'fflate';

import type { PackedContents, WorkWatch } from '../../contract/logbook.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { filmFile, LOGBOOK_FILE, notesFile, TRACES_FILE } from './archiveFormat.ts';
import { createCrc32, crc32Of } from './crc32.ts';
import { createPauses } from './pauses.ts';
import { checkLogbookJson } from './readLogbookJson.ts';
import type { FilmToWrite } from './writeArchive.ts';
import { zipDirectory, type ZippedFile } from './zipDirectory.ts';

export type ArchiveTrouble =
  | 'archive-unreadable'
  | 'archive-newer'
  | 'archive-record'
  | 'archive-too-large';

type ReadTrouble = ArchiveTrouble | 'stopped';

export interface ReadArchive {
  readonly contents: PackedContents;
  readonly films: readonly FilmToWrite[];
}

/** 100,000 sweeps: ten times what a logbook is made for. */
const LARGEST_JSON_BYTES = 200 * 1024 * 1024;
const LARGEST_TRACES_BYTES = 500 * 1024 * 1024;
const SLICE_BYTES = 1 << 22;

/**
 * Reads an archive and checks all of it before anything is given out: every file against its
 * checksum, every record against its schema, every reference against what it names. What is told is
 * how much of the records is checked.
 */
export async function readArchive(
  archive: Blob,
  watch?: WorkWatch,
): Promise<Outcome<ReadArchive, ReadTrouble>> {
  const directory = await zipDirectory(archive);
  if (directory === null) return failed('archive-unreadable', { sizeBytes: archive.size });
  const files = new Map(directory.map((file) => [file.name, file]));
  const text = await contentOf(files.get(LOGBOOK_FILE), LARGEST_JSON_BYTES);
  if (!text.ok) return text;
  const traces = await contentOf(files.get(TRACES_FILE), LARGEST_TRACES_BYTES);
  if (!traces.ok) return traces;
  const json = parsedJson(text.value);
  if (json === undefined) return failed('archive-unreadable', { file: LOGBOOK_FILE });
  const checking = checkLogbookJson(json, traces.value);
  const pause = createPauses();
  let step = checking.next();
  for (; !step.done; step = checking.next()) {
    if (await pause()) watch?.told(step.value);
    if (watch?.stop.aborted) return failed('stopped');
  }
  const read = step.value;
  if (!read.ok) return read;
  const films: FilmToWrite[] = [];
  for (const record of read.value.films) {
    const film = await blobOf(files, filmFile(record.id), record.mimeType);
    if (!film.ok) return film;
    const notes = record.notes ? await blobOf(files, notesFile(record.id), '') : succeeded(null);
    if (!notes.ok) return notes;
    if (watch?.stop.aborted) return failed('stopped');
    films.push({ record, film: film.value, notes: notes.value });
  }
  return succeeded({ contents: read.value.contents, films });
}

async function contentOf(
  file: ZippedFile | undefined,
  largestBytes: number,
): Promise<Outcome<Uint8Array, ArchiveTrouble>> {
  if (!file) return failed('archive-unreadable', { problem: 'it is no logbook' });
  const { name, sizeBytes } = file;
  if (sizeBytes > largestBytes) return failed('archive-too-large', { file: name, sizeBytes });
  const stored = new Uint8Array(await file.stored.arrayBuffer());
  const content = file.isCompressed ? inflated(stored, sizeBytes) : stored;
  if (content === null || content.length !== sizeBytes || crc32Of(content) !== file.crc) {
    return failed('archive-unreadable', { file: name });
  }
  return succeeded(content);
}

/** Into memory of the size that the directory names: a file that swells is broken off there. */
function inflated(stored: Uint8Array, sizeBytes: number): Uint8Array | null {
  try {
    return inflateSync(stored, { out: new Uint8Array(sizeBytes) });
  } catch {
    return null;
  }
}

function parsedJson(content: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(content));
  } catch {
    return undefined;
  }
}

async function blobOf(
  files: ReadonlyMap<string, ZippedFile>,
  name: string,
  mimeType: string,
): Promise<Outcome<Blob, ArchiveTrouble>> {
  const file = files.get(name);
  if (!file || file.isCompressed) return failed('archive-unreadable', { file: name });
  const crc = createCrc32();
  for (let at = 0; at < file.stored.size; at += SLICE_BYTES) {
    crc.add(new Uint8Array(await file.stored.slice(at, at + SLICE_BYTES).arrayBuffer()));
  }
  if (crc.value() !== file.crc) return failed('archive-unreadable', { file: name });
  return succeeded(file.stored.slice(0, file.stored.size, mimeType));
}
