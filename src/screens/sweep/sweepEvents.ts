import { SECTOR_COUNT, type SweepProgress } from '../../contract/sweep.ts';
import { turnSpeedOf } from '../../contract/turnSpeed.ts';
import { coveredSectorCount } from './instructionFor.ts';

/** What is worth a tone and a word: each is heard once, when it happens, and shown as words too. */
export const SWEEP_EVENTS = [
  'found',
  'quarter',
  'half',
  'three-quarters',
  'whole',
  'enough',
  'lost',
  'too-fast',
] as const;
export type SweepEvent = (typeof SWEEP_EVENTS)[number];

const QUARTER_SECTORS = SECTOR_COUNT / 4;
/** By the number of quarters that have passed the sight. */
const QUARTER_EVENTS = ['quarter', 'half', 'three-quarters', 'whole'] as const;

/** The most important thing that happened between two reports, or null. Of a film nobody can slow the hand: `isLive` false. */
export function sweepEventBetween(
  before: SweepProgress | null,
  now: SweepProgress | null,
  isLive = true,
): SweepEvent | null {
  if (now === null) return null;
  if (now.enough) return before?.enough ? null : 'enough';
  if (now.stage === 'lost' && before?.stage === 'following') return 'lost';
  if (now.stage === 'following' && before?.stage !== 'following') return 'found';
  const quarters = quartersOf(now);
  if (quarters > (before === null ? 0 : quartersOf(before))) return QUARTER_EVENTS[quarters - 1]!;
  return isLive && isTooFast(now) && !(before !== null && isTooFast(before)) ? 'too-fast' : null;
}

/** The same event again within this time is one that flickers, s. */
const REPEAT_AFTER_S = 4;

/** True when an event has just been told: a speed that hovers about its limit is told once. */
export function isJustTold(
  event: SweepEvent,
  nowS: number,
  told: { readonly event: SweepEvent; readonly atS: number } | null,
): boolean {
  return told !== null && told.event === event && nowS - told.atS < REPEAT_AFTER_S;
}

function isTooFast(progress: SweepProgress): boolean {
  const speed = progress.turnSpeed ?? turnSpeedOf(progress.turningDegPerS);
  return progress.stage === 'following' && speed === 'fast';
}

function quartersOf(progress: SweepProgress): number {
  return Math.floor(coveredSectorCount(progress) / QUARTER_SECTORS);
}
