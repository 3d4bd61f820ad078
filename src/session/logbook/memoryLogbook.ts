import type { Logbook } from '../../contract/logbook.ts';
import { createLogbook } from './createLogbook.ts';
import { createMemoryRecords } from './memoryRecords.ts';

/** A logbook that lives as long as the page, for tests and for screens without a session. */
export function createMemoryLogbook(): Logbook {
  return createLogbook(createMemoryRecords());
}
