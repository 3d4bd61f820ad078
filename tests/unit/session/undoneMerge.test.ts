import { describe, expect, it } from 'vitest';

import type { Logbook, PackedContents, WheelRecord } from '../../../src/contract/logbook.ts';
import { failed } from '../../../src/contract/outcome.ts';
import { mergedContents } from '../../../src/job/mergedContents.ts';
import { broughtIn, undoneMerge } from '../../../src/job/undoneMerge.ts';
import { createLogbook } from '../../../src/session/logbook/createLogbook.ts';
import { createMemoryLogbook } from '../../../src/session/logbook/memoryLogbook.ts';
import { createMemoryRecords } from '../../../src/session/logbook/memoryRecords.ts';
import { packedContents } from '../../../src/session/logbook/packedTrace.ts';
import { smallLogbook } from '../../fakes/archiveFixtures.ts';
import { noteEntry } from '../../fakes/logRecords.ts';

async function packedOf(logbook: Logbook): Promise<PackedContents> {
  const packed = await logbook.packed();
  if (!packed.ok) throw new Error(packed.failure.code);
  return packed.value;
}

describe('a saved logbook that was brought in', () => {
  it('is undone as if it had never been, with newer wheels, new ones, entries and the stand', async () => {
    const { stand, wheels, entries } = smallLogbook();
    const of = (wheelId: string) => entries.filter((entry) => entry.wheelId === wheelId);
    const [front, rear] = wheels as [WheelRecord, WheelRecord];
    const logbook = createMemoryLogbook();
    await logbook.putIn(
      packedContents({ stand: null, wheels: [front], entries: of('w1').slice(0, 2) }),
    );
    const before = await packedOf(logbook);
    const newer = { ...front, label: 'front right', changedAt: '2031-01-01T00:00:00.000Z' };
    const merge = mergedContents(before, packedContents({ stand, wheels: [newer, rear], entries }));
    expect(merge).toMatchObject({ newWheels: 1, newerWheels: 1, newEntries: 4 });
    await logbook.putIn(merge.contents);
    expect(await logbook.wheel('w1')).toMatchObject({
      value: { label: 'front right', stage: 'proved' },
    });
    await logbook.takeOut(undoneMerge(await packedOf(logbook), broughtIn(before, merge)));
    expect(await packedOf(logbook)).toEqual(before);
  });

  it('undone leaves what was done since: values changed, and a wheel that got entries', async () => {
    const { stand, wheels, entries } = smallLogbook();
    const [front, rear] = wheels as [WheelRecord, WheelRecord];
    const logbook = createMemoryLogbook();
    await logbook.putIn(packedContents({ stand: null, wheels: [front], entries: [] }));
    const before = await packedOf(logbook);
    const newer = { ...front, label: 'front right', changedAt: '2031-01-01T00:00:00.000Z' };
    const merge = mergedContents(before, packedContents({ stand, wheels: [newer, rear], entries }));
    await logbook.putIn(merge.contents);
    await logbook.saveWheel({ ...newer, label: 'my own word' });
    await logbook.addEntry(noteEntry('mine', 'w2', '2031-01-02T00:00:00.000Z', 'rim is bent'));
    await logbook.takeOut(undoneMerge(await packedOf(logbook), broughtIn(before, merge)));
    const after = await packedOf(logbook);
    expect(after.stand).toBeNull();
    expect(after.entries.map(({ entry }) => entry.id)).toEqual(['mine']);
    expect(after.wheels.map(({ id, label }) => [id, label])).toEqual([
      ['w1', 'my own word'],
      ['w2', rear.label],
    ]);
  });

  it('is undone while storage takes nothing, and all of it lives in the page', async () => {
    const store = createMemoryRecords();
    const { stand, wheels, entries } = smallLogbook();
    const [front] = wheels as [WheelRecord, WheelRecord];
    const stored = packedContents({ stand: null, wheels: [front], entries: entries.slice(0, 1) });
    await createLogbook(store).putIn(stored);
    const before = await packedOf(createLogbook(store));
    const blocked = createLogbook({ ...store, write: async () => failed('storage-full') });
    const newer = { ...front, label: 'front right', changedAt: '2031-01-01T00:00:00.000Z' };
    const file = packedContents({ stand, wheels: [newer, wheels[1]!], entries });
    const merge = mergedContents(before, file);
    await blocked.putIn(merge.contents);
    expect((await packedOf(blocked)).wheels).toHaveLength(2);
    await blocked.takeOut(undoneMerge(await packedOf(blocked), broughtIn(before, merge)));
    expect(await packedOf(blocked)).toEqual(before);
    expect(await blocked.wheel('w2')).toMatchObject({ ok: false });
    expect(await blocked.entriesOf('w2')).toEqual({ ok: true, value: [] });
  });
});
