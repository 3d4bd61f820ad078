import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import type { Reading } from '../../src/contract/reading.ts';
import type { EnginePage } from './enginePage.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const SETUP = readFileSync(resolve(ROOT, 'samples/shed-front-left.setup.json'), 'utf8');
/** Reading takes some ten seconds; past this the page hangs. */
const LIMIT_MS = 240_000;

/** How the main job from a file ended in an engine. */
export interface FilmJob {
  /** The reading as the page saves it; null when it came to none. */
  readonly reading: Reading | null;
  /** What the page said instead. */
  readonly problem: string | null;
  /** Addresses behind `#` where the reading stands in the logbook. */
  readonly place: string;
  readonly seconds: number;
}

/**
 * Gives the open page's file input the sample's film and setup and waits for the reading. No driver can be asked for files in the same way in all engines: they are made in the
 * page, and the input is told of them as by a person's choice.
 */
export async function readSampleFilm(page: EnginePage, dist: string): Promise<FilmJob> {
  const film = readdirSync(resolve(dist, 'assets')).find((name) =>
    /^shed-front-left.*\.mp4$/.test(name),
  );
  return page.run<FilmJob>(`
    const pause = (ms) => new Promise((on) => setTimeout(on, ms));
    const find = (role) => document.querySelector('[data-role="' + role + '"]');
    while (!find('sweep-files')) await pause(50);
    let saved = null;
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
      if (blob.type === 'application/json') saved = blob;
      return make.call(URL, blob);
    };
    const film = await (await fetch('./assets/${film}')).blob();
    const chosen = new DataTransfer();
    chosen.items.add(new File([film], 'sweep.mp4', { type: 'video/mp4' }));
    chosen.items.add(new File([${JSON.stringify(SETUP)}], 'sweep.setup.json'));
    const beforeMs = performance.now();
    const input = find('sweep-files');
    input.files = chosen.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
    const isRead = () => document.querySelector('main[data-phase="read"]') && find('download-reading');
    while (!isRead() && !find('problem')) {
      if (performance.now() - beforeMs > ${LIMIT_MS}) throw new Error('the page hangs');
      await pause(100);
    }
    const seconds = (performance.now() - beforeMs) / 1000;
    let reading = null;
    if (isRead()) {
      // Its file is made when the link to it is drawn.
      while (saved === null) await pause(20);
      reading = JSON.parse(await saved.text());
    }
    const place = location.hash;
    const problem = find('problem') ? find('problem').innerText : null;
    return { reading, problem, place, seconds };
  `);
}
