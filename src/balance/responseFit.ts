import { subtractVectors, type PlaneCovariance, type PlaneVector } from '../quantities/vector.ts';
import type { EdgeRise } from './response.ts';
import { symmetricInverse } from './symmetricInverse.ts';

/** One sweep of the wheel and what stood on it then. */
export interface LoadedSweep {
  readonly rise: EdgeRise;
  /** Sum of all weights added since the first sweep, g·mm, wheel frame (`weightVectorGmm`). */
  readonly addedGmm: PlaneVector;
}

export interface RiseFit {
  readonly bareRiseMm: PlaneVector;
  readonly coefficient: PlaneVector;
  readonly covariance: PlaneCovariance;
  readonly chiSquare: number;
  /** Contribution of each sweep to χ². */
  readonly distances: readonly number[];
  readonly residualsMm: readonly PlaneVector[];
}

/** No picture tells a rise better than a tenth of a micrometre: keeps the weights finite, mm². */
const VARIANCE_FLOOR_MM2 = 1e-8;
/** Weight vectors that differ by less are no trial, g·mm. */
const SPREAD_MIN_GMM = 1e-6;

/**
 * Generalised least squares of A_j = a − k·V_j over sweeps (`mirror`: of A_j = a − k·V̄_j), four
 * unknowns: a and k by their components. The V are taken relative to the first and scaled to 1 so
 * that the normal equations are well conditioned. Null when the weights do not differ.
 */
export function fitRiseAgainstWeights(
  sweeps: readonly LoadedSweep[],
  mirror: boolean,
): RiseFit | null {
  const first = sweeps[0]!.addedGmm;
  const steps = sweeps.map((s) => {
    const v = subtractVectors(s.addedGmm, first);
    return mirror ? { along0: v.along0, along90: -v.along90 } : v;
  });
  const scaleGmm = Math.max(...steps.map((v) => Math.hypot(v.along0, v.along90)));
  if (scaleGmm < SPREAD_MIN_GMM) return null;
  const rows = steps.map((v) => designRows(v.along0 / scaleGmm, v.along90 / scaleGmm));
  const weights = sweeps.map((s) => weightOf(s.rise.covarianceMm2));
  const inverse = symmetricInverse(normalMatrix(rows, weights));
  if (!inverse) return null;
  const right = [0, 1, 2, 3].map((column) =>
    rows.reduce((sum, [r0, r90], j) => {
      const y = sweeps[j]!.rise.riseMm;
      const [[w00, w01], [, w11]] = weights[j]!;
      const wy0 = w00 * y.along0 + w01 * y.along90;
      const wy90 = w01 * y.along0 + w11 * y.along90;
      return sum + r0[column]! * wy0 + r90[column]! * wy90;
    }, 0),
  );
  const x = inverse.map((row) => row.reduce((sum, v, i) => sum + v * right[i]!, 0));
  const predict = (r: readonly number[]) => r.reduce((sum, v, i) => sum + v * x[i]!, 0);
  const residualsMm = rows.map(([r0, r90], j) =>
    subtractVectors(sweeps[j]!.rise.riseMm, { along0: predict(r0), along90: predict(r90) }),
  );
  const distances = residualsMm.map((r, j) => squaredDistance(r, weights[j]!));
  const c = (i: number, j: number) => inverse[i]![j]! / (scaleGmm * scaleGmm);
  const coefficient = { along0: x[2]! / scaleGmm, along90: x[3]! / scaleGmm };
  return {
    bareRiseMm: bareRise({ along0: x[0]!, along90: x[1]! }, coefficient, first, mirror),
    coefficient,
    covariance: [
      [c(2, 2), c(2, 3)],
      [c(2, 3), c(3, 3)],
    ],
    chiSquare: distances.reduce((a, b) => a + b, 0),
    distances,
    residualsMm,
  };
}

type Rows = readonly [readonly number[], readonly number[]];

/** Rows of the two components of a − k·v for the unknowns (a0, a90, k0, k90). */
function designRows(v0: number, v90: number): Rows {
  return [
    [1, 0, -v0, v90],
    [0, 1, -v90, -v0],
  ];
}

function weightOf(covariance: PlaneCovariance): PlaneCovariance {
  const a = covariance[0][0] + VARIANCE_FLOOR_MM2;
  const d = covariance[1][1] + VARIANCE_FLOOR_MM2;
  const b = covariance[0][1];
  // The floor keeps a·d − b² above zero; the maximum guards its rounding.
  const determinant = Math.max(a * d - b * b, VARIANCE_FLOOR_MM2 * Math.max(a, d));
  return [
    [d / determinant, -b / determinant],
    [-b / determinant, a / determinant],
  ];
}

function squaredDistance(r: PlaneVector, [[a, b], [, d]]: PlaneCovariance): number {
  return a * r.along0 ** 2 + 2 * b * r.along0 * r.along90 + d * r.along90 ** 2;
}

function normalMatrix(rows: readonly Rows[], weights: readonly PlaneCovariance[]): number[][] {
  const index = [0, 1, 2, 3];
  return index.map((i) =>
    index.map((k) =>
      rows.reduce((sum, [r0, r90], j) => {
        const [[w00, w01], [, w11]] = weights[j]!;
        const w0 = w00 * r0[k]! + w01 * r90[k]!;
        const w90 = w01 * r0[k]! + w11 * r90[k]!;
        return sum + r0[i]! * w0 + r90[i]! * w90;
      }, 0),
    ),
  );
}

/** a belongs to the first sweep's weights; with none at all the rise is a + k·V_first. */
function bareRise(
  a: PlaneVector,
  k: PlaneVector,
  first: PlaneVector,
  mirror: boolean,
): PlaneVector {
  const f90 = mirror ? -first.along90 : first.along90;
  return {
    along0: a.along0 + k.along0 * first.along0 - k.along90 * f90,
    along90: a.along90 + k.along0 * f90 + k.along90 * first.along0,
  };
}
