import {
  appendFileSync,
  existsSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, resolve } from 'node:path';

import type { Browser } from '@playwright/test';
import type * as Mediabunny from 'mediabunny';

/** How good the pictures of the made-up camera are: about as ffmpeg’s -q:v 3. */
const JPEG_QUALITY = 0.85;

/** Where {@link makeCameraFilm} puts the motion-JPEG of a film: known before it is made. */
export function cameraFilmPath(filmPath: string): string {
  return resolve(
    tmpdir(),
    `tiltsweep-${basename(filmPath, '.mp4')}-${statSync(filmPath).size}.mjpeg`,
  );
}

/**
 * Turns a film into the motion-JPEG that Chromium's made-up camera plays, with the browser's own
 * decoder and encoder: no other program is needed. Kept between runs.
 */
export async function makeCameraFilm(
  browser: Browser,
  baseUrl: string,
  filmPath: string,
): Promise<void> {
  const target = cameraFilmPath(filmPath);
  if (existsSync(target)) return;
  const unfinished = `${target}.part`;
  rmSync(unfinished, { force: true });
  const page = await browser.newPage();
  const library = resolve('node_modules/mediabunny/dist/bundles/mediabunny.min.mjs');
  await page.route('**/library.mjs', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: readFileSync(library) }),
  );
  await page.route('**/film.mp4', (route) =>
    route.fulfill({ contentType: 'video/mp4', body: readFileSync(filmPath) }),
  );
  await page.exposeFunction('keepPictures', (base64: string) =>
    appendFileSync(unfinished, Buffer.from(base64, 'base64')),
  );
  await page.goto(baseUrl);
  await page.evaluate(encodePictures, JPEG_QUALITY);
  await page.close();
  renameSync(unfinished, target);
}

/** Runs in the page. */
async function encodePictures(quality: number): Promise<void> {
  const address = '/library.mjs';
  const { BlobSource, Input, MP4, VideoSampleSink } = (await import(address)) as typeof Mediabunny;
  const film = await (await fetch('/film.mp4')).blob();
  const input = new Input({ source: new BlobSource(film), formats: [MP4] });
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw new Error('no pictures in the film');
  const canvas = new OffscreenCanvas(await track.getDisplayWidth(), await track.getDisplayHeight());
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no 2d canvas');
  const { keepPictures } = window as unknown as { keepPictures(base64: string): Promise<void> };
  for await (const sample of new VideoSampleSink(track).samples()) {
    sample.draw(context, 0, 0);
    sample.close();
    const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality });
    const dataUrl = await new Promise<string>((resolveUrl) => {
      const reader = new FileReader();
      reader.addEventListener('load', () => resolveUrl(reader.result as string));
      reader.readAsDataURL(jpeg);
    });
    await keepPictures(dataUrl.slice(dataUrl.indexOf(',') + 1));
  }
}

const START_OF_PICTURE = Buffer.from([0xff, 0xd8, 0xff]);

/** Pictures a second at which Chromium plays a motion-JPEG file as a camera. */
const CAMERA_FPS = 30;

/**
 * The motion-JPEG of a film with a wheel that still waits before it: the first pictures forth and
 * back for so long, no two alike in a row, as when a hand has not begun to turn.
 */
export function withLeadIn(filmPath: string, seconds: number, target: string): void {
  const film = readFileSync(cameraFilmPath(filmPath));
  const starts: number[] = [];
  for (let at = 0; at >= 0; at = film.indexOf(START_OF_PICTURE, at + 1)) starts.push(at);
  const pictures = starts.map((start, index) => film.subarray(start, starts[index + 1]));
  const forth = pictures.slice(0, 8);
  const round = [...forth, ...forth.slice(1, -1).toReversed()];
  const leadIn = Array.from(
    { length: Math.round((seconds * CAMERA_FPS) / round.length) },
    () => round,
  );
  writeFileSync(target, Buffer.concat([...leadIn.flat(), ...pictures]));
}
