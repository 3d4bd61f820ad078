import { resolve } from 'node:path';

import react from '@vitejs/plugin-react';
import { createServer } from 'vite';

export interface ServedGallery {
  readonly address: string;
  close(): Promise<void>;
}

/** The gallery from its own folder, so that none of it is in the built app. */
export async function serveGallery(): Promise<ServedGallery> {
  const server = await createServer({
    configFile: false,
    root: import.meta.dirname,
    plugins: [react()],
    cacheDir: resolve(import.meta.dirname, '../../../node_modules/.vite-gallery'),
    server: { port: 0, fs: { allow: [resolve(import.meta.dirname, '../../..')] } },
    logLevel: 'error',
  });
  await server.listen();
  return { address: server.resolvedUrls!.local[0]!, close: () => server.close() };
}
