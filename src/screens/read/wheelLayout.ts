import type { SweepSetup } from '../../contract/setup.ts';
import { DEG_PER_RAD } from '../../quantities/angle.ts';

/** Radii of the wheel drawing in drawing units, to the scale of the wheel in the setup. */
export interface WheelLayout {
  readonly tyre: number;
  readonly rim: number;
  readonly weights: number;
  readonly bore: number;
  /** Drawing units for one millimetre. */
  readonly unitsPerMm: number;
}

/** Of a setup only the wheel's measures are drawn. */
export interface WheelMeasures {
  readonly wheel: Pick<SweepSetup['wheel'], 'edgeRadiusMm' | 'weightRadiusMm' | 'boreDiameterMm'>;
}

/** Radius of the tyre in drawing units. */
const TYRE_UNITS = 232;
/** Where a setup names no bore: that of a common car wheel. */
const USUAL_BORE_MM = 60;
/** The rim's edge lies a little outside the weights that are stuck inside it. */
const RIM_OVER_WEIGHTS = 1.12;
/** However thin the tyre, the signs on the rim need this much of it. */
const WIDEST_RIM_SHARE = 0.68;

export function wheelLayout(setup: WheelMeasures): WheelLayout {
  const { edgeRadiusMm, weightRadiusMm, boreDiameterMm } = setup.wheel;
  const unitsPerMm = TYRE_UNITS / Math.max(edgeRadiusMm, weightRadiusMm);
  const rim = Math.min(
    weightRadiusMm * RIM_OVER_WEIGHTS * unitsPerMm,
    WIDEST_RIM_SHARE * TYRE_UNITS,
  );
  return {
    tyre: TYRE_UNITS,
    rim,
    weights: Math.min(weightRadiusMm * unitsPerMm, rim - 6),
    bore: Math.min(((boreDiameterMm ?? USUAL_BORE_MM) / 2) * unitsPerMm, rim / 3),
    unitsPerMm,
  };
}

/**
 * Length of an adhesive strip for one gram: steel (7.85 g/cm³), 15 mm wide and 4 mm thick, as such
 * strips commonly are, is 0.471 g a millimetre.
 */
const STRIP_MM_PER_G = 1 / 0.471;
/** A single small piece must still be seen. */
const SHORTEST_STRIP_DEG = 5;

/** Angle that a weight's strip takes on the rim at its radius, degrees. */
export function stripArcDeg(massG: number, radiusMm: number): number {
  const arcDeg = ((Math.abs(massG) * STRIP_MM_PER_G) / radiusMm) * DEG_PER_RAD;
  return Math.min(Math.max(arcDeg, SHORTEST_STRIP_DEG), 350);
}
