import { KNOCK_ODDS, newKnocks, plainDistance, verdictsChanged, weighBins } from './judgedBins.ts';
import { coarseSeries, scaleToUnitNoise, type BinVerdicts, type RawPlanes } from './planeSeries.ts';
import { estimateRocking, motionAt, posteriorFit, type RockingPrior } from './rockingEstimate.ts';
import type { RockingParameters } from './rockingMotion.ts';
import { smoothedBins } from './smoothedBins.ts';
import type { SettledMotion } from './settledState.ts';

/** What the search for knocks goes through. */
export interface KnockSearch {
  readonly raw: RawPlanes;
  /** Weight of each bin by itself. */
  readonly agreement: Float64Array;
  /** Bins merged for the estimate. */
  readonly run: number;
  readonly spinRatio: number;
  readonly prior: RockingPrior;
}

/** Kicks that took knocks in are too strong: between the knocks a wheel is kicked by far less. */
const QUIETER = 0.1;
/** Knocks are believed one within half a second at a time. */
const SEARCH_ROUNDS = 10;
/** Each estimate leaves less for kicks, so that smaller knocks stand out of them. */
const ESTIMATES = 6;
/**
 * On a wheel that is knocked, a jump that is as likely a knock as none is left free as well: one too many
 * costs some of what is known, one too few some of what is true.
 */
const EVEN_ODDS = 0;
/** Where the kick stands among the motion's logarithms. */
const LOG_KICK = 2;

/**
 * The motion of a wheel that was knocked: its speed jumps, free in size, at the bins where that is
 * likelier than that it was kicked evenly all through, or that those bins were seen wrongly.
 *
 * Taken for wild, the bins round a knock were left out and the knock was forgotten; taken for even
 * kicks, each single one is far too weak for them. Which of the two accounts holds, knocks or none, is
 * decided by the posterior of all bins, in which every knock and every bin left out has its price.
 *
 * @param smooth what was found without knocks.
 * @returns null where none shows, or where it does not pay.
 */
export function settleKnocks(search: KnockSearch, smooth: SettledMotion): SettledMotion | null {
  const { raw, agreement, run, spinRatio, prior } = search;
  const { offsetSdMm } = smooth;
  const start = { weight: agreement, knocked: new Uint8Array(raw.count) };
  const { motion, logPoint } = smooth.estimate;
  if (!look(search, start, offsetSdMm, motion).found) return null;
  const quiet = Float64Array.from(logPoint);
  quiet[LOG_KICK] += Math.log(QUIETER);
  let verdicts: BinVerdicts = start;
  for (let round = 0; round < SEARCH_ROUNDS; round++) {
    const next = look(search, verdicts, offsetSdMm, motionAt(quiet)).verdicts;
    const settled = !verdictsChanged(verdicts, next);
    verdicts = next;
    if (settled) break;
  }
  let coarse = coarseSeries(raw, verdicts, run, offsetSdMm);
  let estimate = estimateRocking(coarse, spinRatio, prior, quiet, motion.planeScale);
  for (let round = 0; round < ESTIMATES; round++) {
    const next = look(search, verdicts, offsetSdMm, estimate.motion, EVEN_ODDS).verdicts;
    if (!verdictsChanged(verdicts, next)) break;
    verdicts = next;
    coarse = coarseSeries(raw, verdicts, run, offsetSdMm);
    estimate = estimateRocking(coarse, spinRatio, prior, estimate.logPoint, motion.planeScale);
  }
  const knocked = { estimate, verdicts, offsetSdMm, coarse };
  return costOf(search, knocked) < costOf(search, smooth) ? knocked : null;
}

/** Looks for knocks; only where no more show are bins weighed by their distance. */
function look(
  { raw, agreement, spinRatio }: KnockSearch,
  verdicts: BinVerdicts,
  offsetSdMm: number,
  motion: RockingParameters,
  odds = KNOCK_ODDS,
): { found: boolean; verdicts: BinVerdicts } {
  const smoothed = smoothedBins(raw, verdicts, offsetSdMm, motion, spinRatio);
  if (smoothed === null) return { found: false, verdicts };
  const distance = plainDistance(smoothed, verdicts, agreement);
  const knocks = newKnocks(smoothed, distance, verdicts.knocked, odds);
  if (knocks.length === 0) {
    const weight = weighBins(distance, verdicts, agreement);
    return { found: false, verdicts: { ...verdicts, weight } };
  }
  const knocked = Uint8Array.from(verdicts.knocked);
  for (const b of knocks) knocked[b] = 1;
  return { found: true, verdicts: { weight: agreement, knocked } };
}

/** −log posterior over all bins, with the price of each knock and of each bin weighed down. */
function costOf(
  { raw, agreement, spinRatio, prior }: KnockSearch,
  { verdicts, offsetSdMm, estimate }: SettledMotion,
): number {
  const series = scaleToUnitNoise(raw, verdicts, offsetSdMm);
  const fit = posteriorFit(series, estimate.logPoint, spinRatio, prior);
  if (fit === null) return Infinity;
  let cost = fit.cost;
  verdicts.weight.forEach((weight, b) => {
    // Three planes a bin, whose density is lower by √weight each.
    if (series.root[b * 6] !== 0) cost -= 1.5 * Math.log(weight / agreement[b]);
    cost += (verdicts.knocked[b] * KNOCK_ODDS) / 2;
  });
  return cost;
}
