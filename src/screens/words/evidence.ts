import { formatNumber } from './numbers.ts';

/** One piece of evidence as a person reads it: "widest hole", "105.2°". */
export interface EvidenceText {
  readonly name: string;
  readonly value: string;
}

/** Names whose own words would not tell enough, and the unit where the name has none of its own. */
const BETTER_NAMES: Readonly<Record<string, readonly [name: string, unit?: string]>> = {
  coveredDeg: ['turn seen'],
  usualShare: ['share of the line usually in sight'],
  inlierShare: ['share of the line on one curve'],
  residualPx: ['line off its curve by'],
  spanDeg: ['line seen round the tread'],
  turnWithoutLineDeg: ['turned without the line in sight'],
  secondsWithoutLine: ['without the line', '\u00a0s'],
  longestSeconds: ['longest stretch of that', '\u00a0s'],
  movedPx: ['line found off its place by'],
  aboutSecond: ['at about', '\u00a0s'],
  degreesBetweenPictures: ['turned from picture to picture', '°'],
  widestGapDeg: ['widest hole'],
  rockingRmsMm: ['rocking at the edge'],
  radius95Mm: ['± of the edge’s rise'],
};

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

/** The program's names carry their units as suffixes; a person wants words, and the unit behind. */
export function evidenceText(name: string, value: number | string | boolean): EvidenceText {
  const unit = UNIT_SUFFIXES.find(([suffix]) => name.endsWith(suffix));
  const bare = unit === undefined ? name : name.slice(0, -unit[0].length);
  const words = bare.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase();
  const [betterName = words, betterUnit = unit?.[1] ?? ''] = BETTER_NAMES[name] ?? [];
  return {
    name: betterName,
    value: typeof value === 'number' ? `${shortNumber(value)}${betterUnit}` : String(value),
  };
}

function shortNumber(value: number): string {
  if (Number.isInteger(value)) return formatNumber(value, 0);
  return formatNumber(value, Math.abs(value) < 10 ? 2 : 1);
}
