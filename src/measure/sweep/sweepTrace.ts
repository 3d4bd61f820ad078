import type { SweepTrace } from '../../contract/sweep.ts';
import { RAD_PER_DEG, wrapTurnDeg } from '../../quantities/angle.ts';
import type { SolvedSweep } from './solvedSweep.ts';

/** The edge round the wheel for drawing: mean of all sightings in each bin of wheel angle. */
const BIN_DEG = 1;
const MIN_SIGHTINGS = 5;
/** The rocking period is told when the fit is this sure that anything swings (log likelihood ratio). */
const ROCKING_EVIDENCE = 5;

export function sweepTrace(
  solved: SolvedSweep,
  contributionsG: Readonly<Record<string, number>>,
): SweepTrace {
  const { fit, observations } = solved;
  const bins = 360 / BIN_DEG;
  const sum = new Float64Array(bins);
  const count = new Float64Array(bins);
  const azimuths = observations.azimuthsDeg;
  for (let i = 0; i < observations.timeS.length; i++) {
    for (let a = 0; a < azimuths.length; a++) {
      const residual = fit.residualMm[i * azimuths.length + a];
      if (residual !== residual) continue;
      const bin = Math.floor(wrapTurnDeg(azimuths[a] - observations.turnDeg[i]) / BIN_DEG);
      sum[bin] += residual;
      count[bin]++;
    }
  }
  const wheelAngleDeg: number[] = [];
  const heightMm: number[] = [];
  const residualMm: number[] = [];
  for (let b = 0; b < bins; b++) {
    if (count[b] < MIN_SIGHTINGS) continue;
    const angleDeg = (b + 0.5) * BIN_DEG;
    const leftover = sum[b] / count[b] + wave(fit, angleDeg, 2);
    wheelAngleDeg.push(angleDeg);
    residualMm.push(leftover);
    heightMm.push(fit.offsetMm + onceRound(fit, angleDeg) + leftover);
  }
  return {
    wheelAngleDeg: Float32Array.from(wheelAngleDeg),
    heightMm: Float32Array.from(heightMm),
    residualMm: Float32Array.from(residualMm),
    fit: { offsetMm: fit.offsetMm, cosMm: fit.waveCosMm, sinMm: fit.waveSinMm },
    rockingPeriodS: fit.rocking.evidence > ROCKING_EVIDENCE ? 1 / fit.rocking.frequencyHz : null,
    contributionsG,
  };
}

function onceRound(fit: SolvedSweep['fit'], angleDeg: number): number {
  const b = angleDeg * RAD_PER_DEG;
  return fit.waveCosMm[0] * Math.cos(b) + fit.waveSinMm[0] * Math.sin(b);
}

/** Waves from the n-th on. */
function wave(fit: SolvedSweep['fit'], angleDeg: number, fromN: number): number {
  let sum = 0;
  for (let n = fromN; n <= fit.waveCosMm.length; n++) {
    const b = n * angleDeg * RAD_PER_DEG;
    sum += fit.waveCosMm[n - 1] * Math.cos(b) + fit.waveSinMm[n - 1] * Math.sin(b);
  }
  return sum;
}
