import {
  vectorAmount,
  vectorAngleDeg,
  type PlaneCovariance,
  type PlaneVector,
} from '../quantities/vector.ts';
import { varianceAlong } from './planeCovariance.ts';

/** 95 % intervals of a vector's amount and direction. */
export interface PolarInterval {
  /** In the vector's own unit, from 0 up. */
  readonly amount: readonly [number, number];
  /** Runs clockwise from its first to its second value; null when any direction is possible. */
  readonly angleDeg: readonly [number, number] | null;
}

/** Two-sided 95 % point of the normal distribution. */
const NORMAL_95 = 1.959964;
/** 95 % point of χ² with two degrees of freedom, −2·ln 0.05: a vector inside it may be nothing. */
const CHI2_2_95 = 5.991465;
/** A smaller axis of the error ellipse than this share of the larger counts as none. */
const FLAT_ELLIPSE = 1e-12;
/** A variance under this share of the square of the amount is no error at all to double precision. */
const NO_ERROR = 1e-36;

/**
 * Amount: |v| ± 1.96 standard errors along v, reaching down to 0 while v is inside the 95 % error
 * ellipse of nothing. Direction: all directions n⊥ for which |v·n⊥| ≤ 1.96·√(n⊥ᵀ C n⊥) (Fieller's
 * set), found in the whitened plane where it is the half angle asin(1.96/|w|) about w = L⁻¹v,
 * C = L Lᵀ. Source: E. C. Fieller 1954 (from memory); coverage is tested by simulation.
 */
export function polarInterval95(v: PlaneVector, covariance: PlaneCovariance): PolarInterval {
  const amount = vectorAmount(v);
  const [[c00, c01], [, c11]] = covariance;
  const largest = Math.max(c00, c11);
  if (largest <= NO_ERROR * Math.max(amount * amount, NO_ERROR)) {
    const angleDeg = vectorAngleDeg(v);
    return { amount: [amount, amount], angleDeg: amount > 0 ? [angleDeg, angleDeg] : null };
  }
  // A flat ellipse is thickened imperceptibly so that the whitening exists.
  const a = c00 + FLAT_ELLIPSE * largest;
  const d = c11 + FLAT_ELLIPSE * largest;
  const l00 = Math.sqrt(a);
  const l10 = c01 / l00;
  const l11 = Math.sqrt(Math.max(d - l10 * l10, FLAT_ELLIPSE * largest));
  const w0 = v.along0 / l00;
  const w1 = (v.along90 - l10 * w0) / l11;
  const length = Math.hypot(w0, w1);
  const along = Math.sqrt(varianceAlong(covariance, amount > 0 ? v : { along0: 1, along90: 0 }));
  const low = length * length <= CHI2_2_95 ? 0 : Math.max(0, amount - NORMAL_95 * along);
  const bounds: readonly [number, number] = [low, amount + NORMAL_95 * along];
  if (length <= NORMAL_95) return { amount: bounds, angleDeg: null };
  const half = Math.asin(NORMAL_95 / length);
  const edge = (turn: number): number => {
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    const e0 = w0 * c - w1 * s;
    const e1 = w0 * s + w1 * c;
    return vectorAngleDeg({ along0: l00 * e0, along90: l10 * e0 + l11 * e1 });
  };
  return { amount: bounds, angleDeg: [edge(-half), edge(half)] };
}
