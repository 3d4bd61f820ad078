import { expect, test, type Page } from '@playwright/test';

import { places } from '../../src/screens/shell/places.ts';
import { pagePolicy } from '../../src/server/securityHeaders.ts';
import { main, role } from './support.ts';
import { watchOffences } from './watchers.ts';

const READING_LIMIT_MS = 100_000;

async function visit(page: Page, place: string): Promise<void> {
  await page.goto(`/#${place}`);
  await expect(page.locator('main')).toBeAttached();
  await page.waitForLoadState('networkidle');
}

test('no request to any other origin, no breach of the policy and no error, on any screen', async ({
  page,
  context,
  baseURL,
}) => {
  test.setTimeout(200_000);
  const offences = await watchOffences(context, new URL(baseURL!).origin);
  await page.goto('/');
  await role(page, 'read-sample').click();
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: READING_LIMIT_MS });
  await expect(page).toHaveURL(/#\/wheel\/[^/]+\/reading\//);
  const [, wheelId, entryId] = /#\/wheel\/([^/]+)\/reading\/([^/]+)/.exec(page.url())!;
  for (const place of Object.values(places)) {
    await visit(page, typeof place === 'string' ? place : place(wheelId!, entryId!));
  }
  expect(offences.list).toEqual([]);
});

test('each kind of offence is noticed when it happens', async ({ page, context, baseURL }) => {
  const offences = await watchOffences(context, new URL(baseURL!).origin);
  await page.goto('/');
  await page.evaluate(async () => {
    // Another port is another origin. Nothing listens there, and nothing is to get that far.
    await fetch('http://localhost:9/').catch(() => undefined);
    const drawn = document.createElement('div');
    drawn.innerHTML = '<p style="color: red">inline</p>';
    document.body.append(drawn);
    setTimeout(() => {
      throw new Error('nobody catches this');
    });
  });
  for (const offence of [
    /policy: connect-src refused http:\/\/localhost:9/,
    /policy: style-src-attr refused inline/,
    /console: .*Content Security Policy/,
    /uncaught: nobody catches this/,
  ]) {
    await expect.poll(() => offences.list.join('\n')).toMatch(offence);
  }
});

test('the page is isolated from all others, and its features are off but for those it uses', async ({
  page,
}) => {
  await page.goto('/');
  expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
  const features = await page.evaluate(() =>
    (
      document as unknown as { featurePolicy: { allowedFeatures(): string[] } }
    ).featurePolicy.allowedFeatures(),
  );
  expect(features).toContain('camera');
  expect(features).not.toContain('microphone');
  expect(features).not.toContain('geolocation');
});

test('the policy holds without our headers too, from the page itself', async ({ page }) => {
  await page.route('/', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ body: await answer.text(), contentType: 'text/html; charset=utf-8' });
  });
  await page.goto('/');
  const meta = page.locator('meta[http-equiv="Content-Security-Policy"]');
  await expect(meta).toHaveAttribute('content', pagePolicy());
  const ran = await page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'document.title = "inline";';
    document.body.append(script);
    const evaluated = await new Promise<boolean>((resolve) => {
      const timer = setTimeout(() => resolve(false), 300);
      const probe = document.createElement('script');
      probe.src = 'data:text/javascript,window.name="data"';
      probe.addEventListener('load', () => {
        clearTimeout(timer);
        resolve(true);
      });
      document.body.append(probe);
    });
    return { title: document.title, evaluated };
  });
  expect(ran).toEqual({ title: 'Tiltsweep', evaluated: false });
  await expect(main(page, 'choosing')).toBeVisible();
});
