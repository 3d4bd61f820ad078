import type { FilmRecord, FilmShelf } from '../../contract/filmShelf.ts';
import type { Logbook, PackedContents, WorkWatch } from '../../contract/logbook.ts';
import { mergedContents, type Merge } from '../../job/mergedContents.ts';
import { broughtIn, undoneMerge } from '../../job/undoneMerge.ts';
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
  for (const record of shelf === null ? [] : await allSweeps(shelf)) {
    const film = await shelf!.file(record.id);
    const notes = record.notes ? await shelf!.notes(record.id) : null;
    if (film.ok) films.push({ record, film: film.value, notes: notes?.ok ? notes.value : null });
  }
  const { wheels, entries } = contents.value;
  const allWheels = wheelsForAll(
    wheels,
    entries.map(({ entry }) => entry),
  );
  const archive = await writeArchive({ ...contents.value, wheels: allWheels }, films);
  return new File([archive], `logbook-${today()}.zip`, { type: 'application/zip' });
}

/** Films, and sweeps that broke off and may have notes alone. */
async function allSweeps(shelf: FilmShelf): Promise<readonly FilmRecord[]> {
  const [films, unfinished] = await Promise.all([shelf.films(), shelf.unfinished()]);
  const all = [...(films.ok ? films.value : []), ...(unfinished.ok ? unfinished.value : [])];
  return [...new Map(all.map((record) => [record.id, record])).values()];
}

export async function savedTable(logbook: Logbook): Promise<File | null> {
  const contents = await logbook.packed();
  if (!contents.ok) return null;
  const { wheels, entries } = contents.value;
  const table = readingsCsv({ wheels, entries: entries.map(({ entry }) => entry) });
  return new File([table], `readings-${today()}.csv`, { type: 'text/csv' });
}

/** How bringing in a saved logbook ended. */
export type BringingEnd =
  | { readonly kind: 'stopped' }
  | {
      readonly kind: 'merged';
      readonly merge: Merge;
      readonly films: number;
      /** As it was before; null where nothing came in. False: storage could not be read. */
      readonly undo: (() => Promise<boolean>) | null;
    }
  | {
      readonly kind: 'refused';
      readonly code: ArchiveTrouble | 'storage-trouble';
      readonly where: string | null;
    };

/** How much of the work is done once the records are checked; storing them takes the longer. */
const CHECKED = 0.3;

/**
 * Brings a saved logbook in: all of it, or nothing, also when it is stopped. Films first, since only
 * they can fail to fit.
 */
export async function bringIn(
  file: File,
  logbook: Logbook,
  shelf: FilmShelf,
  { told, stop }: WorkWatch,
): Promise<BringingEnd> {
  const checking = { told: (part: number) => told(CHECKED * part), stop };
  const read = await readArchive(file, checking).catch(() => null);
  if (read === null) return { kind: 'refused', code: 'archive-unreadable', where: null };
  if (!read.ok) {
    const { code, evidence } = read.failure;
    if (code === 'stopped') return { kind: 'stopped' };
    const where = [evidence['where'], evidence['problem']].filter(Boolean).join(': ');
    return { kind: 'refused', code, where: where || null };
  }
  const here = await logbook.packed();
  const shelved = await allSweeps(shelf);
  if (!here.ok) return { kind: 'refused', code: 'storage-trouble', where: null };
  const known = new Set(shelved.map(({ id }) => id));
  const put: string[] = [];
  const takeBack = async () => {
    for (const id of put) await shelf.remove(id);
  };
  for (const { record, film, notes } of read.value.films) {
    if (known.has(record.id)) continue;
    const stored = await shelf.putIn(record, film, notes);
    if (!stored.ok) {
      await takeBack();
      return { kind: 'refused', code: 'storage-trouble', where: null };
    }
    put.push(record.id);
    if (stop.aborted) break;
  }
  const merge = mergedContents(here.value, read.value.contents);
  const storing = { told: (part: number) => told(CHECKED + (1 - CHECKED) * part), stop };
  const end = await logbook.putIn(merge.contents, storing);
  if (end.ok && end.value === 'in') {
    const brought = broughtIn(here.value, merge);
    const undo = async () => {
      const now = await logbook.packed();
      if (!now.ok) return false;
      const out = await logbook.takeOut(undoneMerge(now.value, brought));
      if (out.ok) await takeBack();
      return out.ok;
    };
    const isNothing = put.length === 0 && isEmpty(merge.contents);
    return { kind: 'merged', merge, films: put.length, undo: isNothing ? null : undo };
  }
  await takeBack();
  return { kind: 'stopped' };
}

function isEmpty({ stand, wheels, entries }: PackedContents): boolean {
  return stand === null && wheels.length + entries.length === 0;
}
