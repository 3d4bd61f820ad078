import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';

import type { FilmRecord } from '../../contract/filmShelf.ts';
import type { LogbookContents } from '../../contract/logbook.ts';
import { rowOfEntry } from '../logbook/entryRows.ts';
import {
  ARCHIVE_FORMAT,
  filmFile,
  LOGBOOK_FILE,
  TRACES_FILE,
  type LogbookJson,
} from './archiveFormat.ts';

export interface FilmToWrite {
  readonly record: FilmRecord;
  readonly film: Blob;
}

/** Text of readings packs to a tenth at the quickest level; more effort saves little. */
const QUICKEST = 1;
/** Films are taken along in slices, so that no whole film is in memory. */
const SLICE_BYTES = 1 << 20;

/** The logbook as one file, with the films that are given. */
export async function writeArchive(
  contents: LogbookContents,
  films: readonly FilmToWrite[] = [],
  madeAt: string = new Date().toISOString(),
): Promise<Blob> {
  const parts: BlobPart[] = [];
  let broke: Error | null = null;
  const zip = new Zip((error, bytes) => {
    if (error) broke = error;
    else parts.push(bytes as Uint8Array<ArrayBuffer>);
  });
  const rows = contents.entries.map(rowOfEntry);
  const json: LogbookJson = {
    format: ARCHIVE_FORMAT,
    madeAt,
    stand: contents.stand,
    wheels: contents.wheels,
    entries: rows.map(({ row }) => row),
    films: films.map(({ record }) => record),
  };
  const logbook = new ZipDeflate(LOGBOOK_FILE, { level: QUICKEST });
  zip.add(logbook);
  logbook.push(new TextEncoder().encode(JSON.stringify(json)), true);
  const traces = new ZipPassThrough(TRACES_FILE);
  zip.add(traces);
  traces.push(pointsInOneRun(rows.flatMap(({ points }) => points ?? [])), true);
  for (const { record, film } of films) {
    const file = new ZipPassThrough(filmFile(record.id));
    zip.add(file);
    for (let at = 0; at < film.size; at += SLICE_BYTES) {
      const slice = film.slice(at, at + SLICE_BYTES);
      file.push(new Uint8Array(await slice.arrayBuffer()), at + SLICE_BYTES >= film.size);
    }
    if (film.size === 0) file.push(new Uint8Array(0), true);
  }
  zip.end();
  if (broke) throw broke as Error;
  return new Blob(parts, { type: 'application/zip' });
}

function pointsInOneRun(lists: readonly Float32Array[]): Uint8Array {
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

const IS_LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;
