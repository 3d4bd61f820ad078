import { deleteDB, openDB } from 'idb';

import { proposedStand, proposedWheel } from '../../../src/job/proposals.ts';
import * as schema from '../../../src/session/logbook/databaseSchema.ts';
import { openLogbook } from '../../../src/session/logbook/openLogbook.ts';
import { EARLIER_VERSIONS, writeEarlier } from './earlierVersions.ts';
import { acceptedReading, shedSetup, traceOf } from '../gallery/fixtures.ts';
import { sweepEntry } from '../../fakes/logRecords.ts';

/** The storage layer alone in a page, for tests that reach into it. */
const parts = {
  EARLIER_VERSIONS,
  writeEarlier,
  deleteDB,
  openDB,
  schema,
  openLogbook,
  proposedStand,
  proposedWheel,
  acceptedReading,
  shedSetup,
  traceOf,
  sweepEntry,
};

export type StorageParts = typeof parts;

declare global {
  interface Window {
    storageParts: StorageParts;
  }
}

window.storageParts = parts;
