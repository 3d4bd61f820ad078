import type { Page } from '@playwright/test';

import { connectPage, type LanPlace } from '../../../src/server/connectPage.ts';
import { CONNECT_STYLE } from '../../../src/server/connectStyle.ts';

/** A machine in a network of its own, as `npm start` would find it. */
const PLACE: LanPlace = {
  url: 'https://192.168.178.20:4443/',
  fingerprint: Array.from({ length: 32 }, (_, index) => (index * 7 + 16).toString(16).toUpperCase())
    .map((byte) => byte.padStart(2, '0').slice(-2))
    .join(':'),
};

/** Opens the page that leads a tablet to the app, made as the server makes it. */
export async function openConnectPage(
  page: Page,
  language: 'en' | 'de',
  hasNetwork = true,
): Promise<void> {
  await page.route('http://connect.test/**', (route) =>
    route.request().url().endsWith('.css')
      ? route.fulfill({ contentType: 'text/css', body: CONNECT_STYLE })
      : route.fulfill({
          contentType: 'text/html; charset=utf-8',
          body: connectPage(language, hasNetwork ? PLACE : null),
        }),
  );
  await page.goto('http://connect.test/connect.html');
}
