import type { FilmShelf } from '../../contract/filmShelf.ts';
import type { Logbook } from '../../contract/logbook.ts';
import { createFilmShelf } from '../films/filmShelf.ts';
import { createLogbook } from './createLogbook.ts';
import { createDatabaseAccess } from './database.ts';
import { createDatabaseRecords } from './databaseRecords.ts';
import { createStorageReserve } from './storageReserve.ts';
import { openTabLine } from './tabLine.ts';
import { askToPersist } from './storageWatch.ts';
import { markVisit, wasHereBefore } from './visitMark.ts';

/**
 * Logbook and films in this browser's storage, the same in all its tabs. Where storage cannot be had, a
 * logbook that lives as long as the page, which says so.
 */
export function openLogbook(): { readonly logbook: Logbook; readonly shelf: FilmShelf } {
  let begun = wasHereBefore();
  let wiped = false;
  let tellStorage: () => void = () => undefined;
  const access = createDatabaseAccess(
    () => {
      if (!begun) return;
      wiped = true;
      tellStorage();
    },
    () => reserve.given(),
  );
  const reserve = createStorageReserve(access, () => tellStorage());
  const logbook = createLogbook(createDatabaseRecords(access), {
    tabs: openTabLine('tiltsweep.logbook'),
    wiped: () => wiped,
    reserve,
    onStorageNews: (heard) => (tellStorage = heard),
  });
  logbook.onChange(() => {
    begun = true;
    markVisit();
    void askToPersist();
    void reserve.layBy();
  });
  const shelf = createFilmShelf(access, openTabLine('tiltsweep.films'));
  shelf.onChange(() => {
    tellStorage();
    void reserve.layBy();
  });
  return { logbook, shelf };
}
