import type { Logbook } from '../../contract/logbook.ts';
import { createLogbook } from './createLogbook.ts';
import { createDatabaseAccess } from './database.ts';
import { createDatabaseRecords } from './databaseRecords.ts';
import { openTabLine } from './tabLine.ts';
import { askToPersist } from './storageWatch.ts';
import { markVisit, wasHereBefore } from './visitMark.ts';

/**
 * The logbook in this browser's storage, the same in all its tabs. Where storage cannot be had, a
 * logbook that lives as long as the page, which says so.
 */
export function openLogbook(): Logbook {
  let begun = wasHereBefore();
  let wiped = false;
  const access = createDatabaseAccess(() => (wiped ||= begun));
  const logbook = createLogbook(createDatabaseRecords(access), {
    tabs: openTabLine('tiltsweep.logbook'),
    wiped: () => wiped,
  });
  logbook.onChange(() => {
    begun = true;
    markVisit();
    void askToPersist();
  });
  return logbook;
}
