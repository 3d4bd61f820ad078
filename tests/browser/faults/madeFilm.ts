import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import type { Page } from '@playwright/test';
import type * as Mediabunny from 'mediabunny';

export interface FilmWish {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Pictures of the film that are taken, from its beginning. */
  readonly pictures: number;
  /** Each of them so often, so that the film has so many times its pictures a second. */
  readonly times: number;
}

/** A film of another size and rate, made of the beginning of one by the browser's own coders. */
export async function madeFilm(page: Page, filmPath: string, wish: FilmWish): Promise<Buffer> {
  const library = resolve('node_modules/mediabunny/dist/bundles/mediabunny.min.mjs');
  await page.route('**/library.mjs', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: readFileSync(library) }),
  );
  await page.route('**/film.mp4', (route) =>
    route.fulfill({ contentType: 'video/mp4', body: readFileSync(filmPath) }),
  );
  await page.goto('/');
  const base64 = await page.evaluate(makeFilm, wish);
  return Buffer.from(base64, 'base64');
}

/** Runs in the page. */
async function makeFilm({ widthPx, heightPx, pictures, times }: FilmWish): Promise<string> {
  const address = '/library.mjs';
  const {
    BlobSource,
    BufferTarget,
    CanvasSource,
    Input,
    MP4,
    Output,
    VideoSampleSink,
    WebMOutputFormat,
  } = (await import(address)) as typeof Mediabunny;
  const film = await (await fetch('/film.mp4')).blob();
  const input = new Input({ source: new BlobSource(film), formats: [MP4] });
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw new Error('no pictures in the film');
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no 2d canvas');
  const target = new BufferTarget();
  const output = new Output({ format: new WebMOutputFormat(), target });
  const source = new CanvasSource(canvas, { codec: 'vp8', bitrate: 8e6, latencyMode: 'realtime' });
  output.addVideoTrack(source);
  await output.start();
  let taken = 0;
  for await (const sample of new VideoSampleSink(track).samples()) {
    if (taken === pictures) {
      sample.close();
      break;
    }
    taken += 1;
    sample.draw(context, 0, 0, widthPx, heightPx);
    const stepS = sample.duration / times;
    for (let i = 0; i < times; i++) await source.add(sample.timestamp + i * stepS, stepS);
    sample.close();
  }
  await output.finalize();
  const made = new Blob([target.buffer!]);
  return new Promise((resolveText) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => {
      const dataUrl = reader.result as string;
      resolveText(dataUrl.slice(dataUrl.indexOf(',') + 1));
    });
    reader.readAsDataURL(made);
  });
}
