import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import { chromium, type Page } from '@playwright/test';

import type { SweepSetup } from '../../../src/contract/setup.ts';
import { main, startCamera } from '../../browser/support.ts';
import ensureBrowser from '../../setup/ensureBrowser.ts';
import { fakeCameraFlags } from '../../setup/findChromium.ts';
import { launchWith } from '../../setup/launchWith.ts';
import { buildFresh } from '../buildFresh.ts';
import { serveFolder } from '../serveFolder.ts';

/** Pictures a second of the made-up camera; uncompressed, because its motion JPEG is played at 30. */
const CAMERA_HZ = 60;
const CAMERA_PICTURES = 360;
/** Browser and page are started, and code is compiled, before it counts, s. */
const START_S = 4;
const MEASURED_S = 20;
/** One picture in a hundred may be lost to whatever else a machine does. */
const MOST_DROPPED_SHARE = 0.01;

interface Counts {
  readonly given: number;
  readonly dropped: number;
}

/**
 * The built app before a made-up camera of 1280×720 at 60 pictures a second: how many pictures were
 * given and how many did not reach the core. By the clock, so it says something on a quiet machine only:
 * the made-up camera alone takes a good part of a core.
 */
export async function cameraDrops(root: string): Promise<boolean> {
  const sample = resolve(root, 'samples/shed-front-left');
  const setup = JSON.parse(readFileSync(`${sample}.setup.json`, 'utf8')) as SweepSetup;
  ensureBrowser();
  const served = await serveFolder(buildFresh(root));
  const flags = fakeCameraFlags(uncompressed(`${sample}.mp4`));
  const browser = await chromium.launch(launchWith(flags));
  try {
    const page = await browser.newPage();
    await page.addInitScript(askFor, CAMERA_HZ);
    await page.goto(served.url);
    await startCamera(page, setup);
    await main(page, 'sweeping').waitFor();
    await page.waitForTimeout(1000 * START_S);
    const before = await counts(page);
    await page.waitForTimeout(1000 * MEASURED_S);
    const after = await counts(page);
    const given = after.given - before.given;
    const dropped = after.dropped - before.dropped;
    const kept = given > 0 && dropped <= MOST_DROPPED_SHARE * given;
    console.log(
      `camera of ${CAMERA_HZ} pictures of 1280×720 a second: ${given} given in ${MEASURED_S} s, ` +
        `${dropped} dropped (at most ${100 * MOST_DROPPED_SHARE} % asked): ${kept ? 'kept' : 'NOT KEPT'}; ` +
        `${before.dropped} dropped while starting`,
    );
    return kept;
  } finally {
    await browser.close();
    served.close();
  }
}

function uncompressed(filmPath: string): string {
  const target = join(tmpdir(), `tiltsweep-camera-${CAMERA_HZ}.y4m`);
  if (existsSync(target)) return target;
  const asCamera = ['-r', String(CAMERA_HZ), '-i', filmPath, '-frames:v', String(CAMERA_PICTURES)];
  execFileSync('ffmpeg', ['-v', 'error', '-y', ...asCamera, '-pix_fmt', 'yuv420p', target]);
  return target;
}

type CountingTrack = MediaStreamTrack & { readonly stats?: { readonly totalFrames: number } };

/** Runs in the page, before the app: the camera is asked for at its own rate, and its track is kept. */
function askFor(hz: number): void {
  const devices = navigator.mediaDevices;
  const ask = devices.getUserMedia.bind(devices);
  devices.getUserMedia = async (wanted) => {
    const video = { ...(wanted?.video as MediaTrackConstraints), frameRate: { ideal: hz } };
    const stream = await ask({ ...wanted, video });
    Object.assign(globalThis, { countedTrack: stream.getVideoTracks()[0] });
    return stream;
  };
}

async function counts(page: Page): Promise<Counts> {
  const given = await page.evaluate(
    () =>
      (globalThis as unknown as { countedTrack: CountingTrack }).countedTrack.stats?.totalFrames ??
      0,
  );
  const facts = await page.locator('[data-dropped]').first().getAttribute('data-dropped');
  return { given, dropped: Number(facts) };
}
