import type { LogbookContents, LogEntry, WheelRecord } from '../contract/logbook.ts';

/** What a file brings to a logbook, and what becomes of what is in both. */
export interface Merge {
  /** To be put in; what is the same in both is not in it. */
  readonly contents: LogbookContents;
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
export function mergedContents(here: LogbookContents, file: LogbookContents): Merge {
  const wheelsHere = new Map(here.wheels.map((wheel) => [wheel.id, wheel]));
  const entriesHere = new Map(here.entries.map((entry) => [entry.id, entry]));
  const wheels: WheelRecord[] = [];
  const entries: LogEntry[] = [];
  const count = { newWheels: 0, newerWheels: 0, olderWheels: 0, newEntries: 0 };
  let doubledEntries = 0;
  let sameRecords = 0;
  for (const wheel of file.wheels) {
    const own = wheelsHere.get(wheel.id);
    if (!own) {
      count.newWheels += 1;
      wheels.push(wheel);
    } else if (signOf(withoutState(own)) === signOf(withoutState(wheel))) sameRecords += 1;
    else if (wheel.changedAt > own.changedAt) {
      count.newerWheels += 1;
      wheels.push(wheel);
    } else count.olderWheels += 1;
  }
  for (const entry of file.entries) {
    const own = entriesHere.get(entry.id);
    if (!own) {
      count.newEntries += 1;
      entries.push(entry);
    } else if (signOf(own) === signOf(entry)) sameRecords += 1;
    else {
      const second = { ...entry, id: secondName(entry) };
      const ownSecond = entriesHere.get(second.id);
      if (ownSecond && signOf(ownSecond) === signOf(second)) sameRecords += 1;
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

/** What a wheel is, without what follows from its entries. */
function withoutState({
  stage: _stage,
  lastReading: _last,
  changedAt: _at,
  ...wheel
}: WheelRecord) {
  return wheel;
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

function secondName(entry: LogEntry): string {
  const mark = `~${textMark(signOf(entry))}`;
  return entry.id.slice(0, LONGEST_ID - mark.length) + mark;
}

/** FNV-1a, 32 bits, as eight hexadecimal digits: tells apart the few entries that bear one name. */
function textMark(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
