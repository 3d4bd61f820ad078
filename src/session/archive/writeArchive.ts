import type { FilmRecord } from '../../contract/filmShelf.ts';
import type { PackedContents } from '../../contract/logbook.ts';
import { rowOfPacked } from '../logbook/entryRows.ts';
import {
  ARCHIVE_FORMAT,
  filmFile,
  notesFile,
  IS_LITTLE_ENDIAN,
  LOGBOOK_FILE,
  TRACES_FILE,
  type LogbookJson,
} from './archiveFormat.ts';
import { crc32Of, createCrc32 } from './crc32.ts';
import { storedZip, type FileToStore } from './storedZip.ts';

export interface FilmToWrite {
  readonly record: FilmRecord;
  readonly film: Blob;
  /** Of a sweep without a reading. */
  readonly notes?: Blob | null;
}

/** Films are looked through in slices, so that no whole film is in memory. */
const SLICE_BYTES = 1 << 22;

/** The logbook as one file, with the films that are given; throws when it would be over 4 GB. */
export async function writeArchive(
  contents: PackedContents,
  films: readonly FilmToWrite[] = [],
  madeAt: string = new Date().toISOString(),
): Promise<Blob> {
  const rows = contents.entries.map(rowOfPacked);
  const json: LogbookJson = {
    format: ARCHIVE_FORMAT,
    madeAt,
    stand: contents.stand,
    wheels: contents.wheels,
    entries: rows.map(({ row }) => row),
    films: films.map(({ record, notes }) => (notes ? record : withoutNotes(record))),
  };
  const files = [
    inMemory(LOGBOOK_FILE, new TextEncoder().encode(JSON.stringify(json))),
    inMemory(TRACES_FILE, pointsInOneRun(rows.flatMap(({ points }) => points ?? []))),
  ];
  for (const { record, film, notes } of films) {
    files.push({ name: filmFile(record.id), content: film, crc: await crcOfFilm(film) });
    if (!notes) continue;
    files.push({ name: notesFile(record.id), content: notes, crc: await crcOfFilm(notes) });
  }
  return storedZip(files, 'application/zip');
}

function withoutNotes({ notes: _left, ...record }: FilmRecord): FilmRecord {
  return record;
}

function inMemory(name: string, content: Uint8Array<ArrayBuffer>): FileToStore {
  return { name, content, crc: crc32Of(content) };
}

async function crcOfFilm(film: Blob): Promise<number> {
  const crc = createCrc32();
  for (let at = 0; at < film.size; at += SLICE_BYTES) {
    crc.add(new Uint8Array(await film.slice(at, at + SLICE_BYTES).arrayBuffer()));
  }
  return crc.value();
}

function pointsInOneRun(lists: readonly Float32Array[]): Uint8Array<ArrayBuffer> {
  const all = new DataView(new ArrayBuffer(4 * lists.reduce((sum, list) => sum + list.length, 0)));
  const bytes = new Uint8Array(all.buffer);
  let at = 0;
  for (const list of lists) {
    if (IS_LITTLE_ENDIAN)
      bytes.set(new Uint8Array(list.buffer, list.byteOffset, 4 * list.length), at);
    else list.forEach((value, i) => all.setFloat32(at + 4 * i, value, true));
    at += 4 * list.length;
  }
  return bytes;
}
