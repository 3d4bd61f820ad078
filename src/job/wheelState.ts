import type { LogEntry, SweepEntry, WheelRecord, WheelStage } from '../contract/logbook.ts';
import type { AcceptedReading } from '../contract/reading.ts';
import type { AddedWeight } from '../contract/setup.ts';

/** A sweep that gave figures. */
export type AcceptedSweep = SweepEntry & { readonly reading: AcceptedReading };

/** Where a wheel stands, worked out from its entries alone. */
export interface WheelState {
  readonly stage: WheelStage;
  /** The latest sweep with figures, and the one before it. */
  readonly lastSweep: AcceptedSweep | null;
  readonly sweepBefore: AcceptedSweep | null;
  /** Weights put on or taken off since the latest sweep with figures. */
  readonly addedSince: readonly AddedWeight[];
}

/**
 * `entries` in any order. A wheel is proved when its latest sweep found no more than one weight
 * step at the first ring (common practice for "balanced"), whether weights went on before or not.
 */
export function wheelState(
  entries: readonly LogEntry[],
  wheel: Pick<WheelRecord, 'weightStepG' | 'rings'>,
): WheelState {
  const inOrder = [...entries].sort((a, b) => a.at.localeCompare(b.at));
  let lastSweep: AcceptedSweep | null = null;
  let sweepBefore: AcceptedSweep | null = null;
  let addedSince: AddedWeight[] = [];
  for (const entry of inOrder) {
    if (isAcceptedSweep(entry)) {
      sweepBefore = lastSweep;
      lastSweep = entry;
      addedSince = [];
    } else if (entry.kind === 'weights') {
      addedSince.push(...entry.added);
    }
  }
  return { stage: stageOf(lastSweep, addedSince, wheel), lastSweep, sweepBefore, addedSince };
}

export function isAcceptedSweep(entry: LogEntry): entry is AcceptedSweep {
  return entry.kind === 'sweep' && entry.reading.status === 'ok';
}

function stageOf(
  lastSweep: AcceptedSweep | null,
  addedSince: readonly AddedWeight[],
  { weightStepG, rings }: Pick<WheelRecord, 'weightStepG' | 'rings'>,
): WheelStage {
  if (addedSince.length > 0) return 'weights-on';
  if (lastSweep === null) return 'never-read';
  const oneStepGmm = weightStepG * rings[0]!.radiusMm.value;
  return lastSweep.reading.unbalance.amountGmm <= oneStepGmm ? 'proved' : 'read';
}

/** What the shed's list shows of a wheel: its stage and the figures of its latest sweep. */
export function withStateOf(wheel: WheelRecord, entries: readonly LogEntry[]): WheelRecord {
  const { stage, lastSweep } = wheelState(entries, wheel);
  return { ...wheel, stage, lastReading: lastSweep === null ? null : figuresOf(lastSweep) };
}

function figuresOf(sweep: AcceptedSweep): NonNullable<WheelRecord['lastReading']> {
  const { amountGmm, lightSpotDeg, ci95 } = sweep.reading.unbalance;
  const radiusMm = sweep.setup.wheel.weightRadiusMm;
  const [low, high] = ci95.amountGmm;
  return {
    entryId: sweep.id,
    at: sweep.at,
    amountG: amountGmm / radiusMm,
    plusMinusG: Math.max(high - amountGmm, amountGmm - low) / radiusMm,
    lightSpotDeg,
    isCheck: sweep.setup.after !== undefined,
  };
}
