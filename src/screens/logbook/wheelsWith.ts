import type { WheelRecord } from '../../contract/logbook.ts';

/** Wheels that have every word of the search somewhere in name, place or tyre; the order is kept. */
export function wheelsWith(sought: string, wheels: readonly WheelRecord[]): readonly WheelRecord[] {
  const parts = sought.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  if (parts.length === 0) return wheels;
  return wheels.filter(({ label, place, tyre }) => {
    const text = `${label}\n${place}\n${tyre}`.toLocaleLowerCase();
    return parts.every((part) => text.includes(part));
  });
}
