import type { SourceKind } from '../../contract/session.ts';
import { SECTOR_COUNT, type SweepProgress } from '../../contract/sweep.ts';
import { turnSpeedOf } from '../../contract/turnSpeed.ts';
import { words } from '../words/words.ts';

export type InstructionTone = 'calm' | 'trouble' | 'done';

export interface Instruction {
  readonly say: string;
  readonly tone: InstructionTone;
}

/** From three quarters of the turn on, "a little more" is true and keeps the hand going. */
const ALMOST_SECTORS = Math.round(SECTOR_COUNT * 0.75);
/** Turned so far, the wheel is on its way: no need to say "turn" again. */
const BEGUN_DEG = 10;

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
  return isLive(source)
    ? liveInstruction(progress, source)
    : filmInstruction(progress, fraction, pass);
}

/** A camera, or the practice stand in its place: there is a wheel to turn. */
export function isLive(source: SourceKind): boolean {
  return source === 'camera' || source === 'practice';
}

function liveInstruction(progress: SweepProgress | null, source: SourceKind): Instruction {
  const say =
    source === 'practice' ? { ...words.sweep.live, ...words.sweep.practice } : words.sweep.live;
  if (progress === null) return calm(say.starting);
  if (progress.enough) return { say: say.enough, tone: 'done' };
  if (progress.trouble !== null)
    return { say: words.troubleNow[progress.trouble], tone: 'trouble' };
  if (progress.stage === 'lost') return { say: say.lost, tone: 'trouble' };
  if (progress.stage === 'looking') return calm(say.lookingFirst);
  const speed = progress.turnSpeed ?? turnSpeedOf(progress.turningDegPerS);
  if (speed === 'fast') return { say: say.slower, tone: 'trouble' };
  if (coveredSectorCount(progress) >= ALMOST_SECTORS) return calm(say.almost);
  if (progress.coveredDeg < BEGUN_DEG) return calm(say.begin);
  if (speed === 'still') return calm(say.goBackOn);
  return calm(speed === 'slow' ? say.faster : say.goOn);
}

function filmInstruction(
  progress: SweepProgress | null,
  fraction: number | null,
  pass: 1 | 2,
): Instruction {
  const say = words.sweep.film;
  if (fraction !== null && fraction >= 1) return calm(say.working);
  if (progress === null) return calm(say.starting);
  if (progress.enough) return { say: say.enough, tone: 'done' };
  if (progress.stage === 'lost') return { say: say.lost, tone: 'trouble' };
  if (pass === 2) return calm(say.secondLook);
  return calm(progress.stage === 'looking' ? say.looking : say.following);
}

function calm(say: string): Instruction {
  return { say, tone: 'calm' };
}
