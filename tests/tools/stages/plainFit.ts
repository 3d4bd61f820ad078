import type { SweepObservations } from '../../../src/contract/observations.ts';
import { RAD_PER_DEG } from '../../../src/quantities/angle.ts';
import type { PlaneVector } from '../../../src/quantities/vector.ts';
import { solveSymmetric } from '../../../src/measure/fit/smallMatrix.ts';

/** As the program's own fit has them. */
const WAVES = 4;

/**
 * Once-round wave of heights that hold no rocking: ordinary least squares for offset, stand, waves
 * once to four times round, and a constant an azimuth held near zero. Null when not separable.
 */
export function plainTiltMm(observations: SweepObservations): PlaneVector | null {
  const { azimuthsDeg, turnDeg, heightMm, azimuthBiasSdMm } = observations;
  const blocks = azimuthsDeg.length;
  const n = 3 + 2 * WAVES + blocks;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  const row = new Float64Array(n);
  for (let at = 0; at < heightMm.length; at++) {
    const y = heightMm[at];
    if (y !== y) continue;
    const b = at % blocks;
    const azimuth = azimuthsDeg[b] * RAD_PER_DEG;
    const wheel = azimuth - turnDeg[Math.floor(at / blocks)] * RAD_PER_DEG;
    row.fill(0);
    row.set([1, Math.cos(azimuth), Math.sin(azimuth)]);
    for (let w = 1; w <= WAVES; w++) {
      row[1 + 2 * w] = Math.cos(w * wheel);
      row[2 + 2 * w] = Math.sin(w * wheel);
    }
    row[3 + 2 * WAVES + b] = 1;
    for (let i = 0; i < n; i++) {
      if (row[i] === 0) continue;
      right[i] += row[i] * y;
      for (let j = 0; j < n; j++) normal[i * n + j] += row[i] * row[j];
    }
  }
  for (let i = 3 + 2 * WAVES; i < n; i++) normal[i * n + i] += 1 / azimuthBiasSdMm ** 2;
  const solved = solveSymmetric(normal, right, n);
  return solved && { along0: solved.solution[3], along90: solved.solution[4] };
}
