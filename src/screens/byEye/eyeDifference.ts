import { formatDeg, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

/** Smaller differences are no difference: no stand reads finer. */
const SAME_MASS_G = 0.5;
const SAME_ANGLE_DEG = 1;

export function massOff(massOffG: number, units: Units): string {
  if (Math.abs(massOffG) < SAME_MASS_G) return words.byEye.massRight;
  const mass = formatMass(Math.abs(massOffG), units).text;
  return massOffG > 0 ? words.byEye.tooMuch(mass) : words.byEye.tooLittle(mass);
}

export function angleOff(angleOffDeg: number | null): string {
  if (angleOffDeg === null || Math.abs(angleOffDeg) < SAME_ANGLE_DEG) return words.byEye.angleRight;
  const angle = formatDeg(Math.abs(angleOffDeg));
  return angleOffDeg > 0 ? words.byEye.aheadBy(angle) : words.byEye.behindBy(angle);
}
