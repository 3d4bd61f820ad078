import { expect, type Page } from '@playwright/test';

import { FRONT_LEFT, main, role, startCamera } from '../support.ts';
import { relayCamera, type CameraRelay } from './cameraRelay.ts';
import { entriesOfLogbook, filmsOnShelf } from './storedRecords.ts';

/** Pieces of film, one a second: by then line and edge are found and some of the turn is followed. */
const SOME_PIECES = 6;
/** Until a dead camera is found out, and what there is has been read. */
export const FOUND_OUT = { timeout: 30_000 };

/** A sweep before the made-up camera, under way and recorded for some seconds. */
export async function sweepBy(page: Page, address = '/'): Promise<CameraRelay> {
  const relay = await relayCamera(page);
  await page.goto(address);
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
  const pieces = async () => (await filmsOnShelf(page))[0]?.pieceCount ?? 0;
  await expect.poll(pieces, { timeout: 40_000 }).toBeGreaterThanOrEqual(SOME_PIECES);
  return relay;
}

/** The sweep has ended: said why and what to do, read, kept, and the camera is let go. */
export async function expectReadAfter(page: Page, relay: CameraRelay, code: string): Promise<void> {
  await expect(main(page, 'read', 'refused')).toBeVisible(FOUND_OUT);
  const notice = role(page, 'notice');
  await expect(notice).toHaveAttribute('data-code', code);
  await expect(notice.locator('.notice-cause')).not.toBeEmpty();
  await expect(notice.locator('.notice-remedy')).not.toBeEmpty();
  // That much of a turn was followed says that what was recorded has been read.
  await expect(page.locator('[data-code="turn-incomplete"]')).toBeVisible();
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
  const [entry] = await entriesOfLogbook(page);
  expect(entry).toMatchObject({ kind: 'sweep', source: 'camera' });
  expect(entry!.filmId).not.toBeNull();
  expect(await relay.openCameras()).toBe(0);
}
