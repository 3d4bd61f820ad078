import type { FilmShelf } from '../../contract/filmShelf.ts';
import type { Logbook } from '../../contract/logbook.ts';
import { mergedContents, type Merge } from '../../job/mergedContents.ts';
import { wheelsForAll } from '../../job/wheelsForAll.ts';
import { readArchive, type ArchiveTrouble } from '../../session/archive/readArchive.ts';
import { readingsCsv } from '../../session/archive/readingsCsv.ts';
import { writeArchive, type FilmToWrite } from '../../session/archive/writeArchive.ts';

const today = () => new Date().toISOString().slice(0, 10);

/** The logbook as a file, with the films of the shelf when one is given; null when it cannot be read. */
export async function savedLogbook(
  logbook: Logbook,
  shelf: FilmShelf | null,
): Promise<File | null> {
  const contents = await logbook.packed();
  if (!contents.ok) return null;
  const films: FilmToWrite[] = [];
  const records = shelf === null ? null : await shelf.films();
  for (const record of records?.ok ? records.value : []) {
    const film = await shelf!.file(record.id);
    if (film.ok) films.push({ record, film: film.value });
  }
  const { wheels, entries } = contents.value;
  const allWheels = wheelsForAll(
    wheels,
    entries.map(({ entry }) => entry),
  );
  const archive = await writeArchive({ ...contents.value, wheels: allWheels }, films);
  return new File([archive], `logbook-${today()}.zip`, { type: 'application/zip' });
}

export async function savedTable(logbook: Logbook): Promise<File | null> {
  const contents = await logbook.packed();
  if (!contents.ok) return null;
  const { wheels, entries } = contents.value;
  const table = readingsCsv({ wheels, entries: entries.map(({ entry }) => entry) });
  return new File([table], `readings-${today()}.csv`, { type: 'text/csv' });
}

export type BroughtIn =
  | { readonly kind: 'merged'; readonly merge: Merge; readonly films: number }
  | {
      readonly kind: 'refused';
      readonly code: ArchiveTrouble | 'storage-trouble';
      readonly where: string | null;
    };

/** Brings a saved logbook in: all of it, or nothing. Films first, since only they can fail to fit. */
export async function bringIn(file: File, logbook: Logbook, shelf: FilmShelf): Promise<BroughtIn> {
  const read = await readArchive(file).catch(() => null);
  if (read === null) return { kind: 'refused', code: 'archive-unreadable', where: null };
  if (!read.ok) {
    const { code, evidence } = read.failure;
    const where = [evidence['where'], evidence['problem']].filter(Boolean).join(': ');
    return { kind: 'refused', code, where: where || null };
  }
  const here = await logbook.contents();
  const shelved = await shelf.films();
  if (!here.ok) return { kind: 'refused', code: 'storage-trouble', where: null };
  const known = new Set(shelved.ok ? shelved.value.map(({ id }) => id) : []);
  const put: string[] = [];
  for (const { record, film } of read.value.films) {
    if (known.has(record.id)) continue;
    const stored = await shelf.putIn(record, film);
    if (!stored.ok) {
      for (const id of put) await shelf.remove(id);
      return { kind: 'refused', code: 'storage-trouble', where: null };
    }
    put.push(record.id);
  }
  const merge = mergedContents(here.value, read.value.contents);
  await logbook.putIn(merge.contents);
  return { kind: 'merged', merge, films: put.length };
}
