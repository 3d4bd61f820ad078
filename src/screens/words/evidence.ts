import { displayUnit, type Quantity, type Units } from './displayUnits.ts';
import { formatNumber, formatShare } from './numbers.ts';
import { words } from './words.ts';

/** One piece of evidence as a person reads it: "widest hole", "105.2°". */
export interface EvidenceText {
  readonly name: string;
  readonly value: string;
}

/** Unit suffixes of names, and how they are written behind a number; `S` last, it is the shortest. */
const UNIT_SUFFIXES: readonly (readonly [suffix: string, written: string])[] = [
  ['MmPerGmm', '\u00a0mm/(g·mm)'],
  ['Deg', '°'],
  ['Mm', '\u00a0mm'],
  ['Mrad', '\u00a0mrad'],
  ['Px', '\u00a0px'],
  ['G', '\u00a0g'],
  ['S', '\u00a0s'],
];

/** Parts of one: "shareOfTreadCovered", "inlierShare". */
const IS_SHARE = /^share[A-Z]|Share$/;

/** Suffixes of what a person reads in either system. */
const QUANTITIES: Readonly<Record<string, Quantity>> = { Mm: 'length', G: 'weight' };

/** The program's names carry their units as suffixes; a person wants words, and the unit behind. */
export function evidenceText(
  name: string,
  value: number | string | boolean,
  units: Units,
): EvidenceText {
  const unit = UNIT_SUFFIXES.find(([suffix]) => name.endsWith(suffix));
  const bare = unit === undefined ? name : name.slice(0, -unit[0].length);
  const ownWords = bare.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase();
  const [betterName = ownWords, betterUnit = unit?.[1] ?? ''] = words.evidence[name] ?? [];
  if (typeof value === 'number' && IS_SHARE.test(name)) {
    return { name: betterName, value: formatShare(value) };
  }
  const quantity = unit && QUANTITIES[unit[0]];
  if (typeof value === 'number' && quantity && units !== 'metric') {
    const shown = displayUnit(quantity, units);
    return { name: betterName, value: `${shortNumber(value / shown.size)}\u00a0${shown.name}` };
  }
  return {
    name: betterName,
    value: typeof value === 'number' ? `${shortNumber(value)}${betterUnit}` : String(value),
  };
}

function shortNumber(value: number): string {
  if (Number.isInteger(value)) return formatNumber(value, 0);
  return formatNumber(value, Math.abs(value) < 10 ? 2 : 1);
}
