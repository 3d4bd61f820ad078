import { proposedWheel } from '../../src/job/proposals.ts';
import { writeArchive } from '../../src/session/archive/writeArchive.ts';
import { packedContents } from '../../src/session/logbook/packedTrace.ts';
import { sweepEntry } from './logRecords.ts';

const FIRST_MS = Date.UTC(2020, 0, 1);
const HOUR_MS = 3_600_000;

/** A saved logbook of that many wheels, the sweeps spread over them and over the years. */
export async function createLogbookFile(wheelCount: number, sweepCount: number) {
  const at = (hours: number) => new Date(FIRST_MS + hours * HOUR_MS).toISOString();
  const wheels = Array.from({ length: wheelCount }, (_, i) => ({
    ...proposedWheel(`w${i}`, `shed wheel ${i + 1}`, at(i)),
    place: i % 4 < 2 ? 'front' : 'rear',
  }));
  const entries = Array.from({ length: sweepCount }, (_, i) =>
    sweepEntry(`s${i}`, `w${i % wheelCount}`, at(wheelCount + i), 5 + (i % 50), (i * 37) % 360),
  );
  const contents = packedContents({ stand: null, wheels, entries });
  return new Uint8Array(await (await writeArchive(contents)).arrayBuffer());
}
