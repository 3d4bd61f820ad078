import { zipSync } from 'fflate';

import type { LogbookContents } from '../../src/contract/logbook.ts';
import { writeArchive, type FilmToWrite } from '../../src/session/archive/writeArchive.ts';
import { packedContents } from '../../src/session/logbook/packedTrace.ts';
import { zipDirectory } from '../../src/session/archive/zipDirectory.ts';

/** A logbook as it was saved while `logbook.json` was still compressed: such files are about. */
export async function earlierArchive(
  contents: LogbookContents,
  films: readonly FilmToWrite[] = [],
): Promise<Blob> {
  const files = (await zipDirectory(await writeArchive(packedContents(contents), films))) ?? [];
  const bytes = await Promise.all(
    files.map(async ({ name, stored }) => {
      const level = name === 'logbook.json' ? 1 : 0;
      return [name, [new Uint8Array(await stored.arrayBuffer()), { level }]] as const;
    }),
  );
  return new Blob([zipSync(Object.fromEntries(bytes) as never) as Uint8Array<ArrayBuffer>]);
}
