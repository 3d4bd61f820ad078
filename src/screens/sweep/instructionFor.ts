import type { SourceKind } from '../../contract/session.ts';
import { SECTOR_COUNT, type SweepProgress } from '../../contract/sweep.ts';
import { sweepWords, troubleNow } from '../words/sweepWords.ts';
import { turningSpeedOf } from './turningSpeedOf.ts';

export type InstructionTone = 'calm' | 'trouble' | 'done';

export interface Instruction {
  readonly say: string;
  readonly tone: InstructionTone;
}

/** From three quarters of the turn on, "a little more" is true and keeps the hand going. */
const ALMOST_SECTORS = Math.round(SECTOR_COUNT * 0.75);
/** Two sectors (10°) have passed the sight: the wheel is on its way, no need to say "turn" again. */
const BEGUN_SECTORS = 2;

export function coveredSectorCount(progress: SweepProgress): number {
  return progress.coveredSectors.filter(Boolean).length;
}

/**
 * The one line to read while a sweep runs. Only with a camera is there a hand to guide; of a film
 * it is told how far it has been read, and that it is read once more (`pass` 2) where the first
 * pass taught a better view.
 */
export function instructionFor(
  progress: SweepProgress | null,
  source: SourceKind,
  fraction: number | null,
  pass: 1 | 2 = 1,
): Instruction {
  return source === 'camera'
    ? liveInstruction(progress)
    : filmInstruction(progress, fraction, pass);
}

function liveInstruction(progress: SweepProgress | null): Instruction {
  const words = sweepWords.live;
  if (progress === null) return calm(words.starting);
  if (progress.enough) return { say: words.enough, tone: 'done' };
  if (progress.trouble !== null) return { say: troubleNow[progress.trouble], tone: 'trouble' };
  if (progress.stage === 'lost') return { say: words.lost, tone: 'trouble' };
  if (progress.stage === 'looking') return calm(words.lookingFirst);
  const speed = turningSpeedOf(progress.turningDegPerS);
  if (speed === 'fast') return { say: words.slower, tone: 'trouble' };
  const covered = coveredSectorCount(progress);
  if (covered >= ALMOST_SECTORS) return calm(words.almost);
  if (covered < BEGUN_SECTORS) return calm(words.begin);
  return calm(speed === 'still' ? words.goBackOn : words.goOn);
}

function filmInstruction(
  progress: SweepProgress | null,
  fraction: number | null,
  pass: 1 | 2,
): Instruction {
  const words = sweepWords.film;
  if (fraction !== null && fraction >= 1) return calm(words.working);
  if (progress === null) return calm(words.starting);
  if (progress.enough) return { say: words.enough, tone: 'done' };
  if (progress.stage === 'lost') return { say: words.lost, tone: 'trouble' };
  if (pass === 2) return calm(words.secondLook);
  return calm(progress.stage === 'looking' ? words.looking : words.following);
}

function calm(say: string): Instruction {
  return { say, tone: 'calm' };
}
