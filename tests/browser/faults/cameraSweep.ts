import { expect, type Page } from '@playwright/test';

import type { NoticeCode } from '../../../src/contract/notice.ts';
import { FRONT_LEFT, main, role, startCamera } from '../support.ts';
import { relayCamera, type CameraRelay } from './cameraRelay.ts';
import { expectGoesOn, expectRefused, expectSaid } from './said.ts';
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
export async function expectReadAfter(
  page: Page,
  relay: CameraRelay,
  code: NoticeCode,
): Promise<void> {
  await expect(main(page, 'read', 'refused')).toBeVisible(FOUND_OUT);
  await expectSaid(role(page, 'notice'), code);
  // That much of a turn was followed says that what was recorded has been read.
  await expectRefused(page, 'turn-incomplete');
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
  const [entry] = await entriesOfLogbook(page);
  expect(entry).toMatchObject({ kind: 'sweep', source: 'camera' });
  expect(entry!.filmId).not.toBeNull();
  expect(await relay.openCameras()).toBe(0);
}

/** Without a reload the same page sweeps again, and what was kept before is still there. */
export async function expectSweepsAgain(page: Page, relay: CameraRelay): Promise<void> {
  const before = await entriesOfLogbook(page);
  await expectGoesOn(page);
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
  expect(await relay.openCameras()).toBe(1);
  await role(page, 'stop').click();
  await expect(main(page, 'choosing')).toBeVisible();
  await expect.poll(() => relay.openCameras()).toBe(0);
  expect(await entriesOfLogbook(page)).toEqual(before);
}
