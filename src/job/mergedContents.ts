import type { PackedContents, PackedEntry, WheelRecord } from '../contract/logbook.ts';

/** What a file brings to a logbook, and what becomes of what is in both. */
export interface Merge {
  /** To be put in; what is the same in both is not in it. */
  readonly contents: PackedContents;
  readonly newWheels: number;
  /** Wheels in both with different values: the values changed last are kept. */
  readonly newerWheels: number;
  readonly olderWheels: number;
  readonly newEntries: number;
  /** Entries in both under one name with different content: both are kept. */
  readonly doubledEntries: number;
  readonly sameRecords: number;
  /** True when the file's stand is left out because there is one here. */
  readonly keptOwnStand: boolean;
}

/**
 * Joins a file's records with those that are here, by id. Entries are never overwritten: one that
 * differs from its namesake comes in under a second name, which is made from its content, so that
 * the same file brought in twice adds nothing the second time.
 */
export function mergedContents(here: PackedContents, file: PackedContents): Merge {
  const wheelsHere = new Map(here.wheels.map((wheel) => [wheel.id, wheel]));
  const entriesHere = new Map(here.entries.map((packed) => [packed.entry.id, packed]));
  const wheels: WheelRecord[] = [];
  const entries: PackedEntry[] = [];
  const count = { newWheels: 0, newerWheels: 0, olderWheels: 0, newEntries: 0 };
  let doubledEntries = 0;
  let sameRecords = 0;
  for (const wheel of file.wheels) {
    const own = wheelsHere.get(wheel.id);
    if (!own) {
      count.newWheels += 1;
      wheels.push(wheel);
    } else if (isSameWheel(own, wheel)) sameRecords += 1;
    else if (wheel.changedAt > own.changedAt) {
      count.newerWheels += 1;
      wheels.push(wheel);
    } else count.olderWheels += 1;
  }
  for (const packed of file.entries) {
    const own = entriesHere.get(packed.entry.id);
    if (!own) {
      count.newEntries += 1;
      entries.push(packed);
    } else if (isSameEntry(own, packed)) sameRecords += 1;
    else {
      const second = { ...packed, entry: { ...packed.entry, id: secondName(packed) } };
      const ownSecond = entriesHere.get(second.entry.id);
      if (ownSecond && isSameEntry(ownSecond, second)) sameRecords += 1;
      else {
        doubledEntries += 1;
        entries.push(second);
      }
    }
  }
  const keptOwnStand = here.stand !== null && file.stand !== null;
  const stand = here.stand === null ? file.stand : null;
  const contents = { stand, wheels, entries };
  return { contents, ...count, doubledEntries, sameRecords, keptOwnStand };
}

/** Whether two records say the same of a wheel; what follows from its entries aside. */
export function isSameWheel(a: WheelRecord, b: WheelRecord): boolean {
  return isSame(withoutState(a), withoutState(b));
}

/** What a wheel is, without what follows from its entries. */
function withoutState({
  stage: _stage,
  lastReading: _last,
  changedAt: _at,
  ...wheel
}: WheelRecord) {
  return wheel;
}

function isSameEntry(a: PackedEntry, b: PackedEntry): boolean {
  if (!isSame(a.entry, b.entry)) return false;
  if (a.trace === null || b.trace === null) return a.trace === b.trace;
  return isSame(a.trace.head, b.trace.head) && isSameList(a.trace.points, b.trace.points);
}

function isSameList(a: Float32Array, b: Float32Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Most are written by one program with their fields in one order: that is seen ten times as fast. */
function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b) || signOf(a) === signOf(b);
}

/** The same text for the same content, whatever the order of its fields. */
function signOf(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) => {
    if (part instanceof Float32Array) return [...part];
    if (typeof part !== 'object' || part === null || Array.isArray(part)) return part;
    return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

const LONGEST_ID = 64;

function secondName(packed: PackedEntry): string {
  const { entry } = packed;
  const mark = `~${textMark(signOf(wholeEntry(packed)))}`;
  return entry.id.slice(0, LONGEST_ID - mark.length) + mark;
}

/** An entry with its lists in it, as its second name has been made from the first. */
function wholeEntry({ entry, trace }: PackedEntry): unknown {
  if (trace === null) return entry;
  const { pointCount, ...said } = trace.head;
  const list = (i: number) => trace.points.slice(i * pointCount, (i + 1) * pointCount);
  return {
    ...entry,
    trace: { ...said, wheelAngleDeg: list(0), heightMm: list(1), residualMm: list(2) },
  };
}

/** FNV-1a, 32 bits, as eight hexadecimal digits: tells apart the few entries that bear one name. */
function textMark(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
