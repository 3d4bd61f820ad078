import { plainDistance, verdictsChanged, weighBins } from './judgedBins.ts';
import { settleKnocks } from './knockedMotion.ts';
import { measurePlaneNoise } from './planeNoise.ts';
import { basicPlanes, coarseSeries, type BinVerdicts, type RawPlanes } from './planeSeries.ts';
import { estimateRocking, motionAt, type RockingPrior } from './rockingEstimate.ts';
import type { RockingParameters } from './rockingMotion.ts';
import { deviationScale, type SettledHeights } from './settledHeights.ts';
import type { SettledMotion } from './settledState.ts';
import { smoothedBins } from './smoothedBins.ts';
import { fitWhole, type WholeFit } from './wholeFit.ts';

/** Steps that the search runs on at most: its time is in proportion. */
const COARSE_STEPS = 170;
/** Bins merged at most: 0.3 s, which a swing of 2 s still shows nine tenths of. */
const LONGEST_MERGE = 3;
/** A stretch seen on the wrong edge for seconds is let go of bin by bin; clean sweeps need one. */
const CAUTIOUS_ROUNDS = 4;

export function settleMotion(
  heights: SettledHeights,
  spinRatio: number,
  biasSdMm: number,
  prior: RockingPrior,
): SettledMotion {
  const agreement = heights.binAgreement;
  const first = basicPlanes(heights.planes, heights.waves.known);
  const noise = measurePlaneNoise(first, agreement);
  const offsetSdMm = noise.offsetSdMm / noise.scale;
  let verdicts: BinVerdicts = { weight: agreement, knocked: new Uint8Array(first.count) };
  // Before the motion is known: one lively enough to follow any wheel, so that only what no
  // wheel can do is weighed down.
  const cautious = cautiousMotion(prior, noise.scale);
  for (let round = 0; round < CAUTIOUS_ROUNDS; round++) {
    const next = judge(first, agreement, verdicts, offsetSdMm, cautious, spinRatio);
    const settled = !verdictsChanged(verdicts, next);
    verdicts = next;
    if (settled) break;
  }
  // Deviations alone know the n = 2 wave to a few hundredths of a millimetre; what is left of it
  // turns with the wheel and would be taken for a swing. Planes and deviations together do better.
  const refined = fitWhole(
    heights.planes,
    verdicts,
    offsetSdMm,
    cautious,
    spinRatio,
    biasSdMm,
    deviationScale(heights),
  );
  const raw =
    refined === null ? first : basicPlanes(heights.planes, carriedUnknowns(heights, refined));
  const run = Math.min(LONGEST_MERGE, Math.max(1, Math.ceil(raw.count / COARSE_STEPS)));
  let coarse = coarseSeries(raw, verdicts, run, offsetSdMm);
  let estimate = estimateRocking(coarse, spinRatio, prior, null, noise.scale);
  const next = judge(raw, agreement, verdicts, offsetSdMm, estimate.motion, spinRatio);
  if (verdictsChanged(verdicts, next)) {
    coarse = coarseSeries(raw, next, run, offsetSdMm);
    estimate = estimateRocking(coarse, spinRatio, prior, estimate.logPoint, noise.scale);
  }
  const smooth = { estimate, verdicts: next, offsetSdMm, coarse };
  return settleKnocks({ raw, agreement, run, spinRatio, prior }, smooth) ?? smooth;
}

/** Waves and constants of a whole fit in the order of `HigherWaves.known`. */
function carriedUnknowns(heights: SettledHeights, whole: WholeFit): Float64Array {
  const known = new Float64Array(heights.waves.known.length);
  known.set(whole.coefficients.subarray(3, whole.coefficients.length - 2));
  return known;
}

/** Logarithms of damping, kick, planes' scale, slow change and its time, sway down and across: as `motionAt` takes them. */
const CAUTIOUS_LOGS = [-3, -0.7, 0, -2.3, 1, -3.5, -3.5];

function cautiousMotion(prior: RockingPrior, planeScale: number): RockingParameters {
  const motion = motionAt([Math.log((2 * Math.PI) / prior.periodS), ...CAUTIOUS_LOGS]);
  return { ...motion, planeScale };
}

/** Weighs the bins anew by how far each stands off the motion as it is known now. */
function judge(
  raw: RawPlanes,
  agreement: Float64Array,
  verdicts: BinVerdicts,
  offsetSdMm: number,
  motion: RockingParameters,
  spinRatio: number,
): BinVerdicts {
  const smoothed = smoothedBins(raw, verdicts, offsetSdMm, motion, spinRatio);
  if (smoothed === null) return verdicts;
  const distance = plainDistance(smoothed, verdicts, agreement);
  return { ...verdicts, weight: weighBins(distance, verdicts, agreement) };
}
