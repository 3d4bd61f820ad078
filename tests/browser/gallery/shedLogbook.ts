import type { Logbook, LogEntry, WheelRecord } from '../../../src/contract/logbook.ts';
import { proposedWheel, wheelOfSetup } from '../../../src/job/proposals.ts';
import { acceptedReading, refusedReading, shedSetup, traceOf } from './fixtures.ts';

/** The minibus on a Saturday: four wheels, each at another point of its job. */
export const SHED_WHEEL_IDS = {
  proved: 'front-left',
  weightsOn: 'front-right',
  read: 'rear-left',
  neverRead: 'rear-right',
} as const;

/** Sweeps of these wheels. */
export const SHED_ENTRY_IDS = {
  check: 'sweep-2',
  before: 'sweep-3',
  refused: 'sweep-4',
  read: 'sweep-5',
} as const;

const at = (minute: number) => new Date(Date.UTC(2026, 3, 4, 9, minute)).toISOString();

export async function fillShed(logbook: Logbook): Promise<void> {
  const { proved, weightsOn, read, neverRead } = SHED_WHEEL_IDS;
  const tyre = '195/75 R16 C';
  await logbook.saveWheel(wheel(proved, 'Minibus 1', 'front left', 0));
  await logbook.saveWheel(wheel(weightsOn, 'Minibus 2', 'front right', 1));
  await logbook.saveWheel(wheel(read, 'Minibus 3', 'rear left', 2));
  await logbook.saveWheel({
    ...proposedWheel(neverRead, 'Minibus 4', at(3)),
    place: 'rear right',
    tyre,
  });
  await addAll(logbook, [
    sweep(proved, 'sweep-1', 10, 28.1),
    weights(proved, 'weights-1', 14, 30),
    { ...sweep(proved, 'sweep-2', 18, 1.9), ...checkOf('sweep-1') },
    note(proved, 'note-1', 20, 'Valve cap missing. Tread 5 mm all round.'),
    {
      id: 'eye-1',
      wheelId: weightsOn,
      at: at(29),
      kind: 'by-eye',
      lightSpotDeg: 240,
      massG: 25,
      radiusMm: 185,
      blind: true,
    },
    sweep(weightsOn, 'sweep-3', 30, 41.6),
    weights(weightsOn, 'weights-2', 36, 40),
    { ...sweep(read, 'sweep-4', 40, 0), reading: refusedReading('line-lost'), trace: null },
    sweep(read, 'sweep-5', 45, 17.3),
  ]);
}

function wheel(id: string, label: string, place: string, minute: number): WheelRecord {
  return {
    ...wheelOfSetup(id, shedSetup, at(minute)),
    label,
    place,
    tyre: '195/75 R16 C',
    forbiddenArcs: [{ fromDeg: 350, toDeg: 10 }],
  };
}

function sweep(wheelId: string, id: string, minute: number, amountG: number) {
  const reading = acceptedReading({ amountG: Math.max(amountG, 0.1), heavyDeg: 75, sdG: 0.4 });
  return {
    id,
    wheelId,
    at: at(minute),
    kind: 'sweep' as const,
    source: 'camera' as const,
    setup: shedSetup,
    assumed: [],
    filmId: null,
    reading,
    trace: traceOf(reading),
  };
}

function checkOf(before: string) {
  const added = [{ massG: 30, radiusMm: 185, angleDeg: 255 }];
  const reading = acceptedReading({ amountG: 1.9, heavyDeg: 190, sdG: 0.4, source: 'trial' });
  return { setup: { ...shedSetup, after: { sweep: before, added } }, reading };
}

function weights(wheelId: string, id: string, minute: number, massG: number): LogEntry {
  const added = [{ massG, radiusMm: 185, angleDeg: 255 }];
  return { id, wheelId, at: at(minute), kind: 'weights', added };
}

function note(wheelId: string, id: string, minute: number, text: string): LogEntry {
  return { id, wheelId, at: at(minute), kind: 'note', text };
}

async function addAll(logbook: Logbook, entries: readonly LogEntry[]): Promise<void> {
  for (const entry of entries) {
    const added = await logbook.addEntry(entry);
    if (!added.ok) throw new Error(`fixture ${entry.id} was refused: ${added.failure.code}`);
  }
}
