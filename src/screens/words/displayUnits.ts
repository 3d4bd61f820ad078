import {
  GMM_PER_OUNCE_INCH,
  GRAMS_PER_OUNCE,
  KG_PER_POUND,
  KM_PER_MILE,
  MM_PER_INCH,
  NEWTONS_PER_POUND_FORCE,
} from '../../quantities/units.ts';

/** The two systems a person may read in; the program itself knows only metric. */
export const UNITS = ['metric', 'inch-pound'] as const;
export type Units = (typeof UNITS)[number];

/** Kinds of figures that a person sees, by the metric unit that the program keeps them in. */
export type Quantity =
  /** Weights stuck on, g. */
  | 'weight'
  /** A whole wheel, kg. */
  | 'wheelMass'
  /** mm. */
  | 'length'
  /** g·mm. */
  | 'unbalance'
  /** km/h. */
  | 'speed'
  /** N. */
  | 'force'
  /** Degrees. */
  | 'angle'
  /** Pieces. */
  | 'count';

export interface DisplayUnit {
  readonly name: string;
  /** How much of the program's own unit one of this is. */
  readonly size: number;
  /** Decimals beyond which a stand can tell nothing, or nobody reads. */
  readonly finestDecimals: number;
  /** What one press of a field's plus or minus changes, in this unit. */
  readonly step: number;
}

const SAME_IN_BOTH = {
  angle: { name: '°', size: 1, finestDecimals: 1, step: 1 },
  count: { name: '', size: 1, finestDecimals: 0, step: 1 },
};

/**
 * A tenth of a gram, a hundredth of an ounce (0.3 g): below what any stand can tell. Lengths and
 * the rest are cut at about the same share of what is usual.
 */
const DISPLAY_UNITS: Readonly<Record<Units, Readonly<Record<Quantity, DisplayUnit>>>> = {
  metric: {
    weight: { name: 'g', size: 1, finestDecimals: 1, step: 0.5 },
    wheelMass: { name: 'kg', size: 1, finestDecimals: 2, step: 0.1 },
    length: { name: 'mm', size: 1, finestDecimals: 2, step: 1 },
    unbalance: { name: 'g·mm', size: 1, finestDecimals: 0, step: 10 },
    speed: { name: 'km/h', size: 1, finestDecimals: 0, step: 5 },
    force: { name: 'N', size: 1, finestDecimals: 1, step: 1 },
    ...SAME_IN_BOTH,
  },
  'inch-pound': {
    weight: { name: 'oz', size: GRAMS_PER_OUNCE, finestDecimals: 2, step: 0.05 },
    wheelMass: { name: 'lb', size: KG_PER_POUND, finestDecimals: 1, step: 0.2 },
    length: { name: 'in', size: MM_PER_INCH, finestDecimals: 3, step: 0.05 },
    unbalance: { name: 'oz·in', size: GMM_PER_OUNCE_INCH, finestDecimals: 2, step: 0.1 },
    speed: { name: 'mph', size: KM_PER_MILE, finestDecimals: 0, step: 5 },
    force: { name: 'lbf', size: NEWTONS_PER_POUND_FORCE, finestDecimals: 2, step: 0.2 },
    ...SAME_IN_BOTH,
  },
};

export function displayUnit(quantity: Quantity, units: Units): DisplayUnit {
  return DISPLAY_UNITS[units][quantity];
}
