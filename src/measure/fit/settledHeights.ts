import type { SweepObservations } from '../../contract/observations.ts';
import { reduceToPlanes, type BinPlanes } from './binPlanes.ts';
import type { FrameBins } from './frameBins.ts';
import { weighHeights, type HeightWeights } from './heightWeights.ts';
import { fitHigherWaves, type HigherWaves } from './higherWaves.ts';
import { HIGHER_WAVES } from './tiltFit.ts';

/** Heights reduced to planes, with single wild heights weighed down and higher waves known. */
export interface SettledHeights {
  readonly planes: BinPlanes;
  readonly weights: HeightWeights;
  readonly waves: HigherWaves;
  /** Weight of each bin by how well its frames lie on planes, 0 to 1. */
  readonly binAgreement: Float64Array;
}

/** Weights depend on the waves and the waves on the weights: two rounds agree to a hundredth. */
const ROUNDS = 2;
/** Frames in which this share of heights agrees are as good as any. */
const GOOD_AGREEMENT = 0.8;

export function settleHeights(observations: SweepObservations, bins: FrameBins): SettledHeights {
  let known: Float64Array = new Float64Array(HIGHER_WAVES + observations.azimuthsDeg.length);
  let scale: number | null = null;
  for (let round = 1; ; round++) {
    const weights = weighHeights(observations, bins, known, scale);
    scale = weights.whiteScale;
    const planes = reduceToPlanes(observations, bins, weights.cellWeight);
    const waves = fitHigherWaves(planes, observations.azimuthBiasSdMm, weights.whiteScale);
    known = waves.known;
    if (round === ROUNDS) {
      return { planes, weights, waves, binAgreement: agreementOfBins(bins, weights) };
    }
  }
}

function agreementOfBins(bins: FrameBins, weights: HeightWeights): Float64Array {
  const sum = new Float64Array(bins.count);
  const frames = new Float64Array(bins.count);
  bins.binOfFrame.forEach((b, f) => {
    if (b < 0) return;
    // A frame that is half wild is worth far less than half: its plane may be the hand's.
    sum[b] += Math.min(1, weights.frameAgreement[f] / GOOD_AGREEMENT) ** 4;
    frames[b]++;
  });
  return sum.map((s, b) => s / frames[b]);
}

/** Errors that run along azimuth or over time make many heights worth few. */
export function deviationScale(settled: SettledHeights): number {
  const { azimuthCorrelation, timeCorrelation } = settled.weights;
  const inflate = (r: number): number => {
    const positive = Math.min(Math.max(r, 0), STRONGEST_CORRELATION);
    return (1 + positive) / (1 - positive);
  };
  return settled.waves.scale * Math.sqrt(inflate(azimuthCorrelation) * inflate(timeCorrelation));
}

/** Correlation beyond which a first-order chain no longer describes it, no unit. */
const STRONGEST_CORRELATION = 0.9;
