import { failed, succeeded } from '../contract/outcome.ts';
import { MM_PER_INCH } from '../quantities/units.ts';
import type { BalanceFailed, BalanceOutcome } from './failures.ts';
import { rejectNumbers, type NumberRange } from './inputs.ts';

/** A tyre's size as its sidewall says it. */
export interface TyreSize {
  readonly form: 'metric' | 'metric-without-aspect' | 'inch' | 'flotation';
  readonly sectionWidthMm: number;
  /** Height over width of the section, per cent; assumed where the sidewall does not say it. */
  readonly aspectPercent: number;
  readonly isAspectAssumed: boolean;
  /** Rim diameter code, nominal inches. */
  readonly rimCode: number;
  /** Where the sidewall gives the overall diameter itself, mm. */
  readonly statedDiameterMm: number | null;
  readonly isLightTruck: boolean;
}

/** "165 R 13" stands for a section of about 82 per cent (from memory). */
const ASSUMED_METRIC_ASPECT = 82;
/** "7.50-16" is about as high as its nominal width, a little more (from memory, ± 4). */
const ASSUMED_INCH_ASPECT = 103;

const WIDTH_MM: NumberRange = { low: 100, high: 405 };
const ASPECT: NumberRange = { low: 20, high: 110 };
const RIM_CODE: NumberRange = { low: 8, high: 30 };

/** What may follow: load index, speed letter, ply rating, "C", "LT", "XL", "M+S". */
const TAIL = '(?:\\s*(C|LT))?(?:\\s+.*)?$';
const BUILD = '\\s*(?:[A-Z]{0,2}R|D|B|-)F?\\s*';
const RIM = '(\\d{1,2}(?:[.,]5)?)';
const METRIC = new RegExp(`^(P|LT|T|ST)?\\s*(\\d{3})\\s*/\\s*(\\d{2,3})${BUILD}${RIM}${TAIL}`);
const METRIC_BARE = new RegExp(`^(\\d{3})${BUILD}${RIM}${TAIL}`);
const INCH = new RegExp(`^(\\d{1,2}[.,]\\d{1,2})${BUILD}${RIM}${TAIL}`);
const FLOTATION = new RegExp(
  `^(LT)?(\\d{2}(?:[.,]\\d{1,2})?)\\s*[X×]\\s*(\\d{1,2}(?:[.,]\\d{1,2})?)${BUILD}${RIM}${TAIL}`,
);

/**
 * Reads a tyre size: ISO metric ("205/55 R16 91V", "P205/55R16", "LT235/85R16"), metric without
 * aspect ("165 R 13"), older inch ("7.50-16"), light-truck flotation ("31x10.50 R15 LT").
 */
export function tyreSizeFromText(text: string): BalanceOutcome<TyreSize> {
  const plain = text.trim().toUpperCase();
  const size = metric(plain) ?? metricBare(plain) ?? flotation(plain) ?? inch(plain);
  if (!size) return failed('tyre-size-unreadable', { text });
  return impossible(size) ?? succeeded(size);
}

const number = (text: string): number => Number(text.replace(',', '.'));

function metric(plain: string): TyreSize | null {
  const parts = METRIC.exec(plain);
  if (!parts) return null;
  const [, prefix, width, aspect, rim, suffix] = parts;
  return {
    form: 'metric',
    sectionWidthMm: number(width),
    aspectPercent: number(aspect),
    isAspectAssumed: false,
    rimCode: number(rim),
    statedDiameterMm: null,
    isLightTruck: prefix === 'LT' || suffix !== undefined,
  };
}

function metricBare(plain: string): TyreSize | null {
  const parts = METRIC_BARE.exec(plain);
  if (!parts) return null;
  const [, width, rim, suffix] = parts;
  return {
    form: 'metric-without-aspect',
    sectionWidthMm: number(width),
    aspectPercent: ASSUMED_METRIC_ASPECT,
    isAspectAssumed: true,
    rimCode: number(rim),
    statedDiameterMm: null,
    isLightTruck: suffix !== undefined,
  };
}

function flotation(plain: string): TyreSize | null {
  const parts = FLOTATION.exec(plain);
  if (!parts) return null;
  const [, , diameter, width, rim] = parts;
  const rimCode = number(rim);
  const heightInch = (number(diameter) - rimCode) / 2;
  return {
    form: 'flotation',
    sectionWidthMm: number(width) * MM_PER_INCH,
    aspectPercent: (100 * heightInch) / number(width),
    isAspectAssumed: false,
    rimCode,
    statedDiameterMm: number(diameter) * MM_PER_INCH,
    isLightTruck: true,
  };
}

function inch(plain: string): TyreSize | null {
  const parts = INCH.exec(plain);
  if (!parts) return null;
  const [, width, rim, suffix] = parts;
  return {
    form: 'inch',
    sectionWidthMm: number(width) * MM_PER_INCH,
    aspectPercent: ASSUMED_INCH_ASPECT,
    isAspectAssumed: true,
    rimCode: number(rim),
    statedDiameterMm: null,
    isLightTruck: suffix !== undefined,
  };
}

/** The first figure that no tyre has. */
function impossible(size: TyreSize): BalanceFailed | null {
  const bad = rejectNumbers({
    sectionWidthMm: [size.sectionWidthMm, WIDTH_MM],
    aspectPercent: [size.aspectPercent, ASPECT],
    rimCode: [size.rimCode, RIM_CODE],
  });
  return bad && failed('tyre-size-impossible', bad.failure.evidence);
}
