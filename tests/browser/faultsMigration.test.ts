import { expect, test, type Page } from '@playwright/test';
import type { ViteDevServer } from 'vite';

import type { LogbookSchema, Step } from '../../src/session/logbook/databaseSchema.ts';
import { openStorage, serveStorage } from './storage/storagePage.ts';

/** Databases that an older program wrote, and one that a newer one did: led over, or left alone. */
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

/** What the program of today finds in the database that is there. */
function whatIsThere(page: Page) {
  return page.evaluate(async () => {
    const { openLogbook, openDB, schema } = window.storageParts;
    const { logbook, shelf } = openLogbook();
    const wheels = await logbook.wheels();
    const entries = await logbook.entriesOf('w1');
    const stand = await logbook.stand();
    const films = await shelf.films();
    const film = await shelf.file('f1');
    const unfinished = await shelf.unfinished();
    const notes = await shelf.notes('f2');
    const database = await openDB(schema.DATABASE_NAME);
    const { version } = database;
    database.close();
    return {
      version,
      labels: wheels.ok && wheels.value.map(({ label, stage }) => `${label}: ${stage}`),
      kinds: entries.ok && entries.value.map(({ kind }) => kind),
      heightMm:
        entries.ok && entries.value[0]?.kind === 'sweep'
          ? [...(entries.value[0].trace?.heightMm ?? [])].map((mm) => mm.toFixed(1))
          : [],
      plate: stand.ok && stand.value.plateMaterial,
      films: films.ok && films.value.length,
      filmBytes: film.ok ? [...new Uint8Array(await film.value.arrayBuffer())] : [],
      notedDeg: unfinished.ok && unfinished.value.flatMap((sweep) => sweep.notes?.coveredDeg ?? []),
      noteBytes:
        notes.ok && notes.value ? [...new Uint8Array(await notes.value.arrayBuffer())] : [],
      state: logbook.storage.state(),
    };
  });
}

test('there is a database of every version to try', async ({ page }) => {
  const { versions, newest } = await page.evaluate(() => ({
    versions: Object.keys(window.storageParts.EARLIER_VERSIONS).map(Number),
    newest: window.storageParts.schema.DATABASE_VERSION,
  }));
  expect(versions).toEqual(Array.from({ length: newest }, (_, i) => i + 1));
});

for (const version of [1, 2, 3]) {
  test(`version ${version} is led over to the newest with all that is in it`, async ({ page }) => {
    const newest = await page.evaluate(async (version) => {
      await window.storageParts.writeEarlier(version);
      return window.storageParts.schema.DATABASE_VERSION;
    }, version);
    const hasFilms = version >= 2;
    const there = await whatIsThere(page);
    expect(there).toMatchObject({
      version: newest,
      labels: ['minibus front left: weights-on'],
      kinds: ['sweep', 'weights'],
      heightMm: ['4.9', '-9.6', '-1.3', '13.2'],
      plate: 'mild-steel',
      films: hasFilms ? 1 : 0,
      filmBytes: hasFilms ? [1, 2, 3, 4, 5] : [],
      notedDeg: version >= 3 ? [212.5] : [],
      noteBytes: version >= 3 ? [9, 8, 7, 6, 5] : [],
      state: { trouble: null, unreadableCount: 0, wiped: false },
    });
    // It takes what is new as well.
    const begun = await page.evaluate(async () => {
      const { openLogbook, shedSetup } = window.storageParts;
      const { shelf } = openLogbook();
      const begun = await shelf.begin({ wheelId: 'w1', setup: shedSetup, assumed: [] });
      const piece = { bytes: new Uint8Array([1]), coveredDeg: 1 };
      return begun.ok && (await begun.value.note(piece));
    });
    expect(begun).toBe(true);
  });
}

/** Opens the database one version on, with a made-up step that changes every wheel. */
function openWithNextStep(page: Page, how: 'works' | 'fails') {
  return page.evaluate(async (how) => {
    const { openDB, schema } = window.storageParts;
    const steps: Step[] = [
      ...schema.STEPS,
      async (_, upgrade) => {
        const wheels = upgrade.objectStore('wheels');
        for (const wheel of await wheels.getAll()) {
          await wheels.put({ ...(wheel as object), label: 'led over' });
        }
        if (how === 'fails') throw new Error('made up: the step breaks');
      },
    ];
    try {
      const database = await openDB<LogbookSchema>(schema.DATABASE_NAME, steps.length, {
        upgrade: (database, from, _to, upgrade) =>
          void schema.upgradeDatabase(database, from, upgrade, steps),
      });
      const [wheel] = (await database.getAll('wheels')) as { label: string }[];
      const { version } = database;
      database.close();
      return { version: version - schema.DATABASE_VERSION, label: wheel!.label };
    } catch (error) {
      return { error: (error as Error).name };
    }
  }, how);
}

test('a next step leads the records of version 1 over, through all between', async ({ page }) => {
  await page.evaluate(() => window.storageParts.writeEarlier(1));
  expect(await openWithNextStep(page, 'works')).toEqual({ version: 1, label: 'led over' });
});

test('a step that breaks leaves the older database whole', async ({ page }) => {
  await page.evaluate(() => window.storageParts.writeEarlier(1));
  expect(await openWithNextStep(page, 'fails')).toEqual({ error: 'AbortError' });
  expect(await whatIsThere(page)).toMatchObject({
    labels: ['minibus front left: weights-on'],
    kinds: ['sweep', 'weights'],
  });
});

test('a newer database is said to be one, and left alone', async ({ page }) => {
  await page.evaluate(() => window.storageParts.writeEarlier(2));
  await openWithNextStep(page, 'works');
  const seen = await page.evaluate(async () => {
    const { openLogbook, openDB, proposedWheel, schema } = window.storageParts;
    const { logbook } = openLogbook();
    await logbook.saveWheel(proposedWheel('w2', 'minibus rear', '2026-03-01T09:00:00.000Z'));
    const { trouble, heldCount } = logbook.storage.state();
    const database = await openDB(schema.DATABASE_NAME);
    return { trouble, heldCount, wheels: await database.count('wheels') };
  });
  expect(seen).toEqual({ trouble: 'storage-newer', heldCount: 1, wheels: 1 });
});
