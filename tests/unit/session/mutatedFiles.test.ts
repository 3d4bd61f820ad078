import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { readReading } from '../../../src/contract/readReading.ts';
import { readKeptReading } from '../../../src/contract/readRecords.ts';
import { readSetup } from '../../../src/contract/setup.ts';
import { readArchive } from '../../../src/session/archive/readArchive.ts';
import { writeArchive } from '../../../src/session/archive/writeArchive.ts';
import { packedContents } from '../../../src/session/logbook/packedTrace.ts';
import { acceptedReading, shedSetup } from '../../browser/gallery/fixtures.ts';
import { checkedAtOnce } from '../../fakes/checkedAtOnce.ts';
import { earlierArchive } from '../../fakes/earlierArchive.ts';
import { filmRecord, smallLogbook } from '../../fakes/archiveFixtures.ts';

/**
 * Files spoilt at random, ten thousand of each format: none may throw or hang, and none may put in
 * a record that the program could not have written itself.
 */
const RUNS = 10_000;
const SEED = 20_260_302;
/** What no file may take: all runs of a test together are given a minute. */
const LONGEST_FILE_MS = 5000;

/** One change at one place of a JSON value, chosen by two numbers. */
interface Change {
  readonly place: number;
  readonly value: unknown;
  readonly how: 'replace' | 'remove' | 'double' | 'rename';
}

const odd = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    '',
    ' ',
    '<script>alert(1)</script>',
    '1e999',
    -1,
    0,
    1e308,
    -1e308,
    5e-324,
    [],
    {},
    [[[]]],
    '2026-02-30T25:00:00.000Z',
    '__proto__',
    'constructor',
  ),
  fc.double(),
  fc.string({ unit: 'binary', maxLength: 300 }),
  fc.jsonValue(),
);
const change: fc.Arbitrary<Change> = fc.record({
  place: fc.nat(),
  value: odd,
  how: fc.constantFrom('replace', 'remove', 'double', 'rename'),
});
const changes = fc.array(change, { minLength: 1, maxLength: 4 });

describe('setup files', () => {
  it('spoilt in their values', () => {
    let refused = 0;
    fc.assert(
      fc.property(changes, (list) => {
        const read = inTime(() => readSetup(changed(shedSetup, list)));
        if (!read.ok) return void (refused += 1);
        expect(readSetup(overText(read.value))).toEqual(read);
        expectFinite(read.value);
        expect(read.value.wheel.massKg).toBeGreaterThanOrEqual(2);
        expect(read.value.wheel.massKg).toBeLessThanOrEqual(80);
      }),
      { numRuns: RUNS, seed: SEED },
    );
    // Were none refused, the changes would change nothing.
    expect(refused).toBeGreaterThan(RUNS / 2);
  });
});

describe('readings', () => {
  it('spoilt in their values', () => {
    const reading = acceptedReading({ amountG: 28.1, heavyDeg: 75, sdG: 0.45 });
    let refused = 0;
    fc.assert(
      fc.property(changes, (list) => {
        const json = changed(reading, list);
        const foreign = inTime(() => readReading(json));
        const own = inTime(() => readKeptReading(json));
        if (own.ok) expect(foreign.ok).toBe(true);
        if (!own.ok) refused += 1;
        if (!foreign.ok || foreign.value.status !== 'ok') return;
        const { unbalance, response } = foreign.value;
        expectFinite([unbalance.amountGmm, unbalance.heavySpotDeg, unbalance.covarianceGmm2]);
        expect(unbalance.amountGmm).toBeGreaterThanOrEqual(0);
        expect(response.mmPerGmm).toBeGreaterThan(0);
      }),
      { numRuns: RUNS, seed: SEED },
    );
    expect(refused).toBeGreaterThan(RUNS / 2);
  });
});

describe('exported logbooks', () => {
  it.each([
    ['stored', (...made: Saved) => writeArchive(packedContents(made[0]), made[1])],
    ['compressed', earlierArchive],
  ] as const)(
    '%s, spoilt in their bytes are refused, or hold exactly what was written',
    async (_, write) => {
      const contents = smallLogbook();
      const film = new Blob([new Uint8Array(400).fill(7)]);
      const archive = await write(contents, [{ record: filmRecord('f1', 400), film }]);
      const whole = new Uint8Array(await archive.arrayBuffer());
      const spoil = fc.record({
        bytes: fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { maxLength: 6 }),
        cutAt: fc.option(fc.nat(whole.length), { freq: 4 }),
        tail: fc.uint8Array({ maxLength: 40 }),
      });
      let refused = 0;
      await fc.assert(
        fc.asyncProperty(spoil, async ({ bytes, cutAt, tail }) => {
          const spoilt = whole.slice(0, cutAt ?? whole.length);
          for (const [at, byte] of bytes) if (at < spoilt.length) spoilt[at] = byte;
          const startMs = performance.now();
          const read = await readArchive(new Blob([spoilt, tail]));
          expect(performance.now() - startMs).toBeLessThan(LONGEST_FILE_MS);
          if (read.ok) expect(read.value.contents).toEqual(packedContents(contents));
          else refused += 1;
        }),
        { numRuns: RUNS, seed: SEED },
      );
      expect(refused).toBeGreaterThan(RUNS / 4);
    },
    60_000,
  );

  it('spoilt in their records', async () => {
    const { json, traces } = await insideOf(smallLogbook());
    let refused = 0;
    fc.assert(
      fc.property(changes, (list) => {
        const read = inTime(() => checkedAtOnce(changed(json, list), traces));
        if (!read.ok) return void (refused += 1);
        const { wheels, entries } = read.value.contents;
        const ids = new Set(wheels.map(({ id }) => id));
        expect(ids.size).toBe(wheels.length);
        expect(new Set(entries.map(({ entry }) => entry.id)).size).toBe(entries.length);
        for (const { entry } of entries) expect(ids.has(entry.wheelId)).toBe(true);
        for (const wheel of wheels) {
          expect(wheel.massKg.value).toBeGreaterThanOrEqual(2);
          expect(wheel.rings.length).toBeGreaterThan(0);
          expect(Number.isNaN(Date.parse(wheel.changedAt))).toBe(false);
        }
      }),
      { numRuns: RUNS, seed: SEED },
    );
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    expect(refused).toBeGreaterThan(RUNS / 4);
  }, 60_000);
});

type Saved = Parameters<typeof earlierArchive>;

function inTime<T>(work: () => T): T {
  const startMs = performance.now();
  const value = work();
  expect(performance.now() - startMs).toBeLessThan(LONGEST_FILE_MS);
  return value;
}

function overText(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

function expectFinite(value: unknown): void {
  JSON.stringify(value, (_, part: unknown) => {
    if (typeof part === 'number') expect(Number.isFinite(part)).toBe(true);
    return part;
  });
}

/** A copy with the changes made; places are counted over all values, in order. */
function changed(value: unknown, list: readonly Change[]): unknown {
  const root = { root: structuredClone(value) };
  for (const { place, value: next, how } of list) {
    const spots = spotsOf(root);
    const spot = spots[place % spots.length]!;
    const holder = spot.holder as Record<string, unknown>;
    if (how === 'replace') holder[spot.key] = next;
    else if (how === 'double' && Array.isArray(holder)) holder.push(holder[Number(spot.key)]);
    else if (how === 'rename' && !Array.isArray(holder)) {
      Object.defineProperty(holder, String(next), {
        value: holder[spot.key],
        enumerable: true,
        configurable: true,
        writable: true,
      });
      delete holder[spot.key];
    } else if (Array.isArray(holder)) holder.splice(Number(spot.key), 1);
    else delete holder[spot.key];
  }
  return root.root;
}

function spotsOf(root: { root: unknown }): { holder: unknown; key: string }[] {
  const spots: { holder: unknown; key: string }[] = [];
  const visit = (holder: unknown, key: string) => {
    spots.push({ holder, key });
    const value = (holder as Record<string, unknown>)[key];
    if (typeof value !== 'object' || value === null) return;
    for (const inner of Object.keys(value)) visit(value, inner);
  };
  visit(root, 'root');
  return spots;
}

async function insideOf(contents: ReturnType<typeof smallLogbook>) {
  const { zipDirectory } = await import('../../../src/session/archive/zipDirectory.ts');
  const files = (await zipDirectory(await writeArchive(packedContents(contents))))!;
  const bytes = async (name: string) =>
    new Uint8Array(await files.find((file) => file.name === name)!.stored.arrayBuffer());
  const text = new TextDecoder().decode(await bytes('logbook.json'));
  return { json: JSON.parse(text) as unknown, traces: await bytes('traces.f32') };
}
