import { succeeded } from '../contract/outcome.ts';
import { MM_PER_INCH } from '../quantities/units.ts';
import type { BalanceOutcome } from './failures.ts';
import { rejectNumbers, type NumberRange } from './inputs.ts';
import type { TyreSize } from './tyreSize.ts';

/** A length proposed to the person, to be measured and edited: never more than assumed. */
interface Proposal {
  readonly valueMm: number;
  readonly standardDeviationMm: number;
  readonly origin: 'assumed';
}

export interface TyreDimensions {
  readonly rimDiameterMm: number;
  readonly beadSeatDiameterMm: number;
  readonly overallDiameterMm: number;
  readonly edgeRadius: Proposal;
  readonly adhesiveWeightRadius: Proposal;
  readonly clipOnWeightRadius: Proposal;
}

const RIM_CODE: NumberRange = { low: 8, high: 30 };
const WIDTH_MM: NumberRange = { low: 50, high: 500 };
const ASPECT: NumberRange = { low: 1, high: 200 };

/** Rim diameter d in mm: the code's inches, rounded to a millimetre (UN R30 table, from memory). */
export function rimDiameterMm(rimCode: number): BalanceOutcome<number> {
  return (
    rejectNumbers({ rimCode: [rimCode, RIM_CODE] }) ?? succeeded(Math.round(rimCode * MM_PER_INCH))
  );
}

/** Up to code 16 seats are 0.8 mm under the inches, from 17 on 4.8 mm over (ISO 4000-2, from memory). */
const LARGE_SEAT_FROM_CODE = 17;
const SMALL_SEAT_LESS_MM = 0.8;
const LARGE_SEAT_MORE_MM = 4.8;

/**
 * Diameter at the bead seat, mm: a plain ×25.4 misses it. Half codes (16.5, 17.5, …) are truck rims
 * with steep seats of the plain inches.
 */
export function beadSeatDiameterMm(rimCode: number): BalanceOutcome<number> {
  return rejectNumbers({ rimCode: [rimCode, RIM_CODE] }) ?? succeeded(seatMm(rimCode));
}

function seatMm(rimCode: number): number {
  const plainMm = rimCode * MM_PER_INCH;
  if (!Number.isInteger(rimCode)) return plainMm;
  return rimCode < LARGE_SEAT_FROM_CODE
    ? plainMm - SMALL_SEAT_LESS_MM
    : plainMm + LARGE_SEAT_MORE_MM;
}

/** The shoulder edge that the camera follows lies some 11 mm inside the overall radius. */
const EDGE_UNDER_CROWN_MM = 11;
const EDGE_SD_MM = 5;
/** Adhesive weights lie on the barrel's inner ledge, some 18 mm inside the bead seat. */
const ADHESIVE_UNDER_SEAT_MM = 18;
const ADHESIVE_SD_MM = 8;
/** A clip-on's mass hangs under the flange's lip, some 10 mm outside the bead seat (flange 17.5 mm). */
const CLIP_ON_OVER_SEAT_MM = 10;
const CLIP_ON_SD_MM = 4;

/**
 * Overall diameter D = d + 2·(section width × aspect/100) unless the sidewall states it, with the
 * rim's d; bead seat; and proposals for the radii at which edge and weights sit. Source: UN R30 and
 * ETRTO design rule; the three radii are shed practice, marked assumed.
 */
export function tyreDimensions(size: TyreSize): BalanceOutcome<TyreDimensions> {
  const { sectionWidthMm, aspectPercent, rimCode, statedDiameterMm } = size;
  const bad = rejectNumbers({
    sectionWidthMm: [sectionWidthMm, WIDTH_MM],
    aspectPercent: [aspectPercent, ASPECT],
    statedDiameterMm: [statedDiameterMm ?? STATED_DIAMETER_MM.low, STATED_DIAMETER_MM],
  });
  if (bad) return bad;
  const rim = rimDiameterMm(rimCode);
  if (!rim.ok) return rim;
  const overallDiameterMm =
    statedDiameterMm ?? rim.value + (2 * sectionWidthMm * aspectPercent) / 100;
  const beadSeatMm = seatMm(rimCode);
  const propose = (valueMm: number, standardDeviationMm: number): Proposal => ({
    valueMm,
    standardDeviationMm,
    origin: 'assumed',
  });
  return succeeded({
    rimDiameterMm: rim.value,
    beadSeatDiameterMm: beadSeatMm,
    overallDiameterMm,
    edgeRadius: propose(overallDiameterMm / 2 - EDGE_UNDER_CROWN_MM, EDGE_SD_MM),
    adhesiveWeightRadius: propose(beadSeatMm / 2 - ADHESIVE_UNDER_SEAT_MM, ADHESIVE_SD_MM),
    clipOnWeightRadius: propose(beadSeatMm / 2 + CLIP_ON_OVER_SEAT_MM, CLIP_ON_SD_MM),
  });
}

const STATED_DIAMETER_MM: NumberRange = { low: 300, high: 1500 };
