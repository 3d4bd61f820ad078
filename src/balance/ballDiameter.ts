import { failed, succeeded } from '../contract/outcome.ts';
import { MM_PER_INCH } from '../quantities/units.ts';
import type { BalanceOutcome } from './failures.ts';

/** Balls that could carry a wheel, mm: larger than any pea, smaller than any bowl. */
const BALL_MIN_MM = 5;
const BALL_MAX_MM = 400;
/** A bare number without a unit is taken as millimetres from here on; below, it could be inches. */
const BARE_MM_FROM = 20;

const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const PATTERN =
  /^(?:(\d+(?:\.\d+)?)(?:[ -]+(?=\d+ ?\/))?)?(?:(\d+) ?\/ ?(\d+))? ?(mm|in|inch|inches|"|″)?$/;

/**
 * A ball's diameter as people write it, in mm: "63.5", "63,5 mm", "2 1/2 in", "2½\"", "1-15/16″".
 * A fraction means inches unless "mm" is written; a bare number means mm from 20 up and is asked
 * about below that.
 */
export function ballDiameterFromText(text: string): BalanceOutcome<number> {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .replace(/,/g, '.')
    .replace(/\s+/g, ' ')
    .trim();
  const parts = PATTERN.exec(plain);
  const [, whole, above, below, unit] = parts ?? [];
  if (whole === undefined && above === undefined) return failed('diameter-unreadable', { text });
  const value = Number(whole ?? 0) + (above === undefined ? 0 : Number(above) / Number(below));
  const isFraction = above !== undefined;
  if (!unit && !isFraction && value < BARE_MM_FROM)
    return failed('diameter-unit-missing', { text });
  const isInch = unit ? unit !== 'mm' : isFraction;
  const diameterMm = isInch ? value * MM_PER_INCH : value;
  if (!(diameterMm >= BALL_MIN_MM && diameterMm <= BALL_MAX_MM)) {
    return failed('diameter-unreadable', { text, diameterMm: String(diameterMm) });
  }
  return succeeded(diameterMm);
}
