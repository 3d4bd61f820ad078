import type { Browser, Page } from '@playwright/test';

import type { SweepSetup } from '../../src/contract/setup.ts';
import { proposedStand, wheelOfSetup } from '../../src/job/proposals.ts';
import { writeArchive } from '../../src/session/archive/writeArchive.ts';

/** What a page holds after its memory was tidied up. */
export interface Held {
  /** Objects and buffers of page and workers, and what the page draws, MB. */
  readonly scriptsMb: number;
  /** Memory of the page's process in all: also pictures of the camera that nobody closed, MB. */
  readonly processMb: number;
}

/** Makes {@link heldBy} answer at once instead of at the browser's own next tidying up. */
export const MEASURE_AT_ONCE = '--enable-blink-features=ForceEagerMeasureMemory';

/** The browser counts page and workers together, in isolated pages only (W3C, Measure Memory API). */
export async function heldBy(browser: Browser, page: Page): Promise<Held> {
  const bytes = await page.evaluate(async () => {
    const { bytes } = await (
      performance as unknown as { measureUserAgentSpecificMemory(): Promise<{ bytes: number }> }
    ).measureUserAgentSpecificMemory();
    return bytes;
  });
  return { scriptsMb: bytes / 1e6, processMb: await largestPage(browser, 'VmRSS') };
}

/** The most memory that the process of a page has had so far, MB; not a number where it is not told. */
export const peakMb = (browser: Browser): Promise<number> => largestPage(browser, 'VmHWM');

async function largestPage(browser: Browser, field: 'VmRSS' | 'VmHWM'): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const pages = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
  return Math.max(...(await Promise.all(pages.map((id) => toldMb(id, field)))));
}

/** Aims the camera at a wheel of a fresh logbook; resolves when the sight is found and followed. */
export async function openLiveView(page: Page, setup: SweepSetup): Promise<void> {
  const wheel = wheelOfSetup('w1', setup, new Date().toISOString());
  const archive = await writeArchive({ stand: proposedStand(), wheels: [wheel], entries: [] });
  await page.goto('/#/logbook');
  await page.locator('[data-role="bring-in"]').setInputFiles({
    name: 'logbook.zip',
    mimeType: 'application/zip',
    buffer: Buffer.from(await archive.arrayBuffer()),
  });
  await page.locator('[data-role="archive-said"][data-kind="merged"]').waitFor();
  await page.goto('/#/wheel/w1/sight');
  await page.locator('main[data-phase="sighting"]').waitFor();
}

/** Linux tells of a process's memory in /proc; elsewhere it is not known. */
async function toldMb(processId: number, field: 'VmRSS' | 'VmHWM'): Promise<number> {
  const { readFile } = await import('node:fs/promises');
  const status = await readFile(`/proc/${processId}/status`, 'utf8').catch(() => '');
  return Number(new RegExp(`${field}:\\s+(\\d+) kB`).exec(status)?.[1] ?? NaN) / 1000;
}
