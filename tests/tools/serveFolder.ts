import { findServed, serveLocally } from '../../src/server/startServers.ts';
import { readServedFiles } from '../../src/server/servedFiles.ts';

/** Serves a built folder on this machine only, on a free port unless told, as `npm start` does. */
export async function serveFolder(
  folder: string,
  port = 0,
): Promise<{ readonly url: string; close(): void }> {
  const served = await serveLocally(findServed(readServedFiles(folder), null), port);
  if (!served.ok) throw new Error(`${served.failure.code}: port ${port}`);
  return { url: `http://localhost:${served.value.port}/`, close: served.value.close };
}
