/** Unit conversions, each exact by definition unless it says otherwise. */

/** Avoirdupois ounce (international yard and pound agreement, 1959; exact). */
export const GRAMS_PER_OUNCE = 28.349523125;
/** International inch (exact). */
export const MM_PER_INCH = 25.4;
/** One ounce-inch of unbalance in g·mm (exact product of the two above). */
export const GMM_PER_OUNCE_INCH = GRAMS_PER_OUNCE * MM_PER_INCH;
/** Standard acceleration of gravity (CGPM 1901, ISO 80000-3; exact by definition), m/s². */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

/** Avoirdupois pound (international yard and pound agreement, 1959; exact). */
export const KG_PER_POUND = 0.45359237;
/** International mile (exact). */
export const KM_PER_MILE = 1.609344;
/** Pound-force: a pound under standard gravity (exact product). */
export const NEWTONS_PER_POUND_FORCE = KG_PER_POUND * STANDARD_GRAVITY_M_PER_S2;
