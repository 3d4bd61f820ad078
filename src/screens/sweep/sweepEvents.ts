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

function quartersOf(progress: SweepProgress): number {
  return Math.floor(coveredSectorCount(progress) / QUARTER_SECTORS);
}
