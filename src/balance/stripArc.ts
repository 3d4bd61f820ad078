import { succeeded } from '../contract/outcome.ts';
import { DEG_PER_RAD } from '../quantities/angle.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers } from './inputs.ts';

/** sin(x)/x, 1 at nothing. */
function sinc(x: number): number {
  return Math.abs(x) < 1e-8 ? 1 : Math.sin(x) / x;
}

/**
 * Pull of a strip bent along its radius: m·r·sin(x)/x with x = L/(2r) half its angle, g·mm. A strip
 * all round pulls nowhere. Source: centroid of a circular arc.
 */
export function stripMomentGmm(
  massG: number,
  lengthMm: number,
  radiusMm: number,
): BalanceOutcome<number> {
  const bad = rejectNumbers({
    massG: [massG, NOT_NEGATIVE],
    lengthMm: [lengthMm, NOT_NEGATIVE],
    radiusMm: [radiusMm, POSITIVE],
  });
  if (bad) return bad;
  return succeeded(massG * radiusMm * sinc(lengthMm / (2 * radiusMm)));
}

export interface Piece {
  readonly massG: number;
  readonly lengthMm: number;
}

/** Pieces laid end to end along one radius, in the order given, clockwise. */
export interface LaidStrip {
  /** Length of the sum of all pulls, g·mm. */
  readonly momentGmm: number;
  /** From the direction of that sum: how far the strip reaches counter-clockwise and clockwise. */
  readonly behindDeg: number;
  readonly aheadDeg: number;
  /** Middle of each piece from the direction of the sum, degrees clockwise. */
  readonly offsetsDeg: readonly number[];
}

/**
 * Lays pieces end to end: piece i with half angle x_i centred at c_i pulls m_i·r·sin(x_i)/x_i there;
 * the sum's direction is the spot at which the strip acts.
 */
export function layStrip(pieces: readonly Piece[], radiusMm: number): LaidStrip {
  let edge = 0;
  let along = 0;
  let aside = 0;
  const centres = pieces.map(({ massG, lengthMm }) => {
    const halfAngle = lengthMm / (2 * radiusMm);
    const centre = edge + halfAngle;
    edge += 2 * halfAngle;
    const pull = massG * radiusMm * sinc(halfAngle);
    along += pull * Math.cos(centre);
    aside += pull * Math.sin(centre);
    return centre;
  });
  // The mean of the centres lies near the sum's direction: unwrapping about it keeps reach positive.
  const direction =
    edge / 2 +
    Math.atan2(
      aside * Math.cos(edge / 2) - along * Math.sin(edge / 2),
      along * Math.cos(edge / 2) + aside * Math.sin(edge / 2),
    );
  return {
    momentGmm: Math.hypot(along, aside),
    behindDeg: direction * DEG_PER_RAD,
    aheadDeg: (edge - direction) * DEG_PER_RAD,
    offsetsDeg: centres.map((centre) => (centre - direction) * DEG_PER_RAD),
  };
}
