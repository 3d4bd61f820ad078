import { expect, test, type Page } from '@playwright/test';
import type { ViteDevServer } from 'vite';

import { openStorage, serveStorage } from './storage/storagePage.ts';

/** The logbook in the browser's own database: what is written is there, and how it came there. */
let server: ViteDevServer;
let address: string;

test.beforeAll(async () => {
  ({ server, address } = await serveStorage());
});

test.afterAll(async () => {
  await server.close();
});

test.beforeEach(async ({ page }) => {
  await openStorage(page, address);
});

/** Two wheels, one with a sweep and a weight. */
async function fillLogbook(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { openLogbook, proposedWheel, sweepEntry } = window.storageParts;
    const { logbook } = openLogbook();
    await logbook.saveWheel(proposedWheel('w1', 'minibus front left', '2026-03-01T08:00:00.000Z'));
    await logbook.saveWheel(proposedWheel('w2', 'minibus rear', '2026-03-01T09:00:00.000Z'));
    await logbook.addEntry(sweepEntry('s1', 'w1', '2026-03-02T08:00:00.000Z'));
    await logbook.addEntry({
      id: 'p1',
      wheelId: 'w1',
      at: '2026-03-02T08:05:00.000Z',
      kind: 'weights',
      added: [{ massG: 30, radiusMm: 185, angleDeg: 255 }],
    });
  });
}

test('what was written is there after a reload, trace and all', async ({ page }) => {
  await fillLogbook(page);
  await page.reload();
  await openStorage(page, address);
  const seen = await page.evaluate(async () => {
    const { openLogbook, sweepEntry } = window.storageParts;
    const { logbook } = openLogbook();
    const wheels = await logbook.wheels();
    const entry = await logbook.entry('s1');
    const made = sweepEntry('s1', 'w1', '2026-03-02T08:00:00.000Z');
    const plain = (value: unknown) =>
      JSON.stringify(value, (_, one: unknown) => (one instanceof Float32Array ? [...one] : one));
    return {
      labels: wheels.ok && wheels.value.map(({ label, stage }) => `${label}: ${stage}`),
      amountG: wheels.ok && wheels.value[0]!.lastReading?.amountG,
      same: entry.ok && plain(entry.value) === plain(made),
      state: logbook.storage.state(),
    };
  });
  expect(seen.labels).toEqual(['minibus front left: weights-on', 'minibus rear: never-read']);
  expect(seen.amountG).toBeCloseTo(28.1, 6);
  expect(seen.same).toBe(true);
  expect(seen.state).toMatchObject({ trouble: null, heldCount: 0, wiped: false });
});

test('taking an entry back and putting it in again leads the wheel back and forth', async ({
  page,
}) => {
  await fillLogbook(page);
  const stages = await page.evaluate(async () => {
    const { openLogbook } = window.storageParts;
    const { logbook } = openLogbook();
    const stage = async () => {
      const wheel = await logbook.wheel('w1');
      return wheel.ok ? wheel.value.stage : wheel.failure.code;
    };
    const weights = await logbook.entry('p1');
    if (!weights.ok) throw new Error('no weights');
    const seen = [await stage()];
    await logbook.removeEntry('p1');
    seen.push(await stage());
    await logbook.addEntry(weights.value);
    seen.push(await stage());
    return seen;
  });
  expect(stages).toEqual(['weights-on', 'read', 'weights-on']);
});

test('a batch with one record that cannot be stored leaves nothing of itself', async ({ page }) => {
  const seen = await page.evaluate(async () => {
    const { openLogbook, proposedWheel } = window.storageParts;
    const { logbook } = openLogbook();
    const good = proposedWheel('good', 'good', '2026-03-01T08:00:00.000Z');
    // A function cannot be stored: the browser throws on it.
    const bad = { ...proposedWheel('bad', 'bad', '2026-03-01T08:00:00.000Z'), label: () => 1 };
    await logbook.putIn({ stand: null, wheels: [good, bad as never], entries: [] });
    const { trouble, heldCount } = logbook.storage.state();
    const elsewhere = await openLogbook().logbook.wheels();
    return { trouble, heldCount, stored: elsewhere.ok && elsewhere.value.length };
  });
  expect(seen).toEqual({ trouble: 'storage-failed', heldCount: 2, stored: 0 });
});

test('a stored record that this program does not know is left out and left alone', async ({
  page,
}) => {
  await fillLogbook(page);
  const seen = await page.evaluate(async () => {
    const { openLogbook, openDB, schema } = window.storageParts;
    const db = await openDB(schema.DATABASE_NAME);
    await db.put('wheels', { id: 'odd', label: 'from elsewhere', massKg: 'heavy' });
    const { logbook } = openLogbook();
    const wheels = await logbook.wheels();
    await logbook.saveStand(window.storageParts.proposedStand());
    return {
      ids: wheels.ok && wheels.value.map(({ id }) => id),
      unreadable: logbook.storage.state().unreadableCount,
      still: await db.get('wheels', 'odd'),
    };
  });
  expect(seen).toEqual({
    ids: ['w1', 'w2'],
    unreadable: 1,
    still: { id: 'odd', label: 'from elsewhere', massKg: 'heavy' },
  });
});
