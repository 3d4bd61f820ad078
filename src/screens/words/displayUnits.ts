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
  | 'force';

export interface DisplayUnit {
  readonly name: string;
  /** How much of the program's own unit one of this is. */
  readonly size: number;
  /** Decimals beyond which a stand can tell nothing, or nobody reads. */
  readonly finestDecimals: number;
}

/**
 * A tenth of a gram, a hundredth of an ounce (0.3 g): below what any stand can tell. Lengths and
 * the rest are cut at about the same share of what is usual.
 */
const DISPLAY_UNITS: Readonly<Record<Units, Readonly<Record<Quantity, DisplayUnit>>>> = {
  metric: {
    weight: { name: 'g', size: 1, finestDecimals: 1 },
    wheelMass: { name: 'kg', size: 1, finestDecimals: 2 },
    length: { name: 'mm', size: 1, finestDecimals: 2 },
    unbalance: { name: 'g·mm', size: 1, finestDecimals: 0 },
    speed: { name: 'km/h', size: 1, finestDecimals: 0 },
    force: { name: 'N', size: 1, finestDecimals: 1 },
  },
  'inch-pound': {
    weight: { name: 'oz', size: GRAMS_PER_OUNCE, finestDecimals: 2 },
    wheelMass: { name: 'lb', size: KG_PER_POUND, finestDecimals: 1 },
    length: { name: 'in', size: MM_PER_INCH, finestDecimals: 3 },
    unbalance: { name: 'oz·in', size: GMM_PER_OUNCE_INCH, finestDecimals: 2 },
    speed: { name: 'mph', size: KM_PER_MILE, finestDecimals: 0 },
    force: { name: 'lbf', size: NEWTONS_PER_POUND_FORCE, finestDecimals: 2 },
  },
};

export function displayUnit(quantity: Quantity, units: Units): DisplayUnit {
  return DISPLAY_UNITS[units][quantity];
}
