import type { Weight } from '../../contract/reading.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import type { LeadInstruction } from '../../job/leadInstruction.ts';
import { formatClockAndDeg, formatDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { LeadWord } from './leadSignals.ts';

/** The line to read while the hand is led. */
export function leadLine(
  say: LeadInstruction,
  weight: Weight,
  units: Units,
  progress: SweepProgress | null,
): string {
  if (say.kind === 'turn') return turnWords(say.byDeg);
  if (say.kind === 'at-spot') return atSpotWords(weight, units);
  if (say.kind === 'find-tape') return words.lead.findTape;
  if (progress === null || progress.stage === 'looking') return words.lead.looking;
  return progress.trouble === null ? words.lead.lost : words.troubleNow[progress.trouble];
}

/** What is said aloud when the instruction changes. */
export function leadSpoken(
  word: LeadWord,
  say: LeadInstruction,
  weight: Weight,
  units: Units,
): string {
  if (word === 'turn') return say.kind === 'turn' ? turnWords(say.byDeg) : '';
  if (word === 'near') return words.lead.near;
  if (word === 'here') return atSpotWords(weight, units);
  return word === 'find-tape' ? words.lead.findTape : words.lead.lost;
}

/** "Stick 20 g at 8:30 · 255°": without a camera. */
export function leadPlaceWords({ massG, angleDeg }: Weight, units: Units): string {
  const mass = formatKnownMass(Math.abs(massG), units);
  const where = formatClockAndDeg(angleDeg);
  return massG < 0 ? words.lead.takeOffAt(mass, where) : words.lead.stickAt(mass, where);
}

function turnWords(byDeg: number): string {
  return words.lead.turn(formatDeg(Math.abs(byDeg)), byDeg > 0);
}

function atSpotWords({ massG }: Weight, units: Units): string {
  const mass = formatKnownMass(Math.abs(massG), units);
  return massG < 0 ? words.lead.takeOff(mass) : words.lead.stick(mass);
}
