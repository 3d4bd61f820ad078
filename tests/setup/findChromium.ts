import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

/** A browser that the system already has, or undefined: then Playwright's own is used. */
export function findChromium(): string | undefined {
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter)];
  return folders
    .flatMap((folder) => NAMES.map((name) => join(folder, name)))
    .find((path) => existsSync(path));
}

/**
 * Flags for a quiet browser without a graphics card that talks to nobody. As root, as in a
 * container, Chromium runs only without its sandbox.
 */
export const CHROMIUM_FLAGS = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A made-up camera, granted without asking; `filmPath` is a motion-JPEG file that it loops. */
export function fakeCameraFlags(filmPath?: string): string[] {
  return [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    ...(filmPath ? [`--use-file-for-fake-video-capture=${filmPath}`] : []),
  ];
}
