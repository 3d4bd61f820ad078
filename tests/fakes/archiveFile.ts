import { writeArchive } from '../../src/session/archive/writeArchive.ts';
import { packedContents } from '../../src/session/logbook/packedTrace.ts';
import { filmRecord, smallLogbook } from './archiveFixtures.ts';

/** The small logbook as the bytes of a saved file. */
export async function archiveFile({ withFilm = true } = {}): Promise<Uint8Array> {
  const film = new Blob([new Uint8Array(400).fill(7)]);
  const films = withFilm ? [{ record: filmRecord('f1', film.size), film }] : [];
  return new Uint8Array(
    await (await writeArchive(packedContents(smallLogbook()), films)).arrayBuffer(),
  );
}
