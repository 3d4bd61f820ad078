import { SECTOR_COUNT, type SweepProgress } from '../../contract/sweep.ts';
import { coveredSectorCount } from './instructionFor.ts';

/** What is worth a tone: each is heard once, when it happens, and shown as words too. */
export type SweepEvent = 'found' | 'quarter' | 'enough' | 'lost';

const QUARTER_SECTORS = SECTOR_COUNT / 4;

/** The most important thing that happened between two reports, or null. */
export function sweepEventBetween(
  before: SweepProgress | null,
  now: SweepProgress | null,
): SweepEvent | null {
  if (now === null) return null;
  if (now.enough && !before?.enough) return 'enough';
  if (now.stage === 'lost' && before?.stage === 'following') return 'lost';
  if (now.stage === 'following' && before?.stage !== 'following') return 'found';
  return quartersOf(now) > (before === null ? 0 : quartersOf(before)) ? 'quarter' : null;
}

/** A film that is read once more starts again: what was told of it before no longer holds. */
export function beganAnew(before: SweepProgress | null, now: SweepProgress | null): boolean {
  return before !== null && now !== null && now.framesSeen < before.framesSeen;
}

function quartersOf(progress: SweepProgress): number {
  return Math.floor(coveredSectorCount(progress) / QUARTER_SECTORS);
}
