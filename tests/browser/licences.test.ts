import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

import { expect, test } from '@playwright/test';

import { licenceTrouble, type ShippedPackage } from '../../src/build/licenceTrouble.ts';
import { buildFresh } from '../tools/buildFresh.ts';

const root = resolve(import.meta.dirname, '../..');
const dist = buildFresh(root);
const shipped = JSON.parse(
  readFileSync(join(dist, 'licences.json'), 'utf8'),
) as readonly ShippedPackage[];

test('every package that is shipped may be shipped, with its licence', () => {
  expect(shipped.length).toBeGreaterThan(10);
  for (const one of shipped) expect(licenceTrouble(one), one.name).toBeNull();
});

test('page, worker and service worker are all in the list', () => {
  const names = shipped.map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(['react-dom', 'mediabunny', 'workbox-core']));
  // The service worker names its parts itself.
  const worker = readFileSync(join(dist, 'sw.js'), 'utf8');
  const parts = [...worker.matchAll(/workbox:([a-z-]+):\d/g)].map(([, part]) => `workbox-${part}`);
  expect(parts).not.toHaveLength(0);
  expect(names).toEqual(expect.arrayContaining(parts));
});
