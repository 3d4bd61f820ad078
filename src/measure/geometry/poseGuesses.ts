import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { leastSquaresMinimum } from '../fit/levenbergMarquardt.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import { circleOffsets, type LinePoints } from './circleResiduals.ts';
import { mixtureCost } from './lineMixture.ts';
import {
  believedFocalPx,
  lineRadiusMm,
  poseOfParameters,
  posePriors,
  type KnownOfCamera,
} from './poseBelief.ts';

/**
 * Poses to start from: circles through three points each, with tilt and focal length as believed;
 * those that explain all points best come first. With half of the line on the face, one triple in
 * eight lies on it wholly: enough to be met many times among these.
 */
const TRIPLES = 96;
/** So many triples take as long as measuring a picture. */
const TRIPLES_A_STEP = 12;
/** A triple says something about yaw and roll when it spans this part of the picture's width. */
const LEAST_SPAN = 0.2;
/** Distances from the axis to try, in edge radii: from close by to across the shed. */
const START_DISTANCES = [1.8, 2.6];
/** Tilt and focal length only as believed: the circle misses its points by about this, px. */
const GUESS_SD_PX = 1.5;
/** A guess is only begun from: a step below this share of each parameter's size ends its search. */
const GUESS_STEP = 1e-2;
/** Points on which guesses are compared: every bin of the picture says what its neighbour says. */
const COMPARED_POINTS = 60;
/** Steps of an evenly filling sequence in three dimensions (additive recurrence, Roberts 2018, from memory). */
const EVEN_STEPS = [0.8191725134, 0.6710436067, 0.5497004779];

export function* poseGuesses(
  points: LinePoints,
  known: KnownOfCamera,
  count: number,
): SlicedWork<Float64Array[]> {
  const order = Array.from(points.xPx, (_, i) => i).sort((a, b) => points.xPx[a] - points.xPx[b]);
  const compared = taken(points, evenly(order, COMPARED_POINTS));
  const guesses: { parameters: Float64Array; cost: number }[] = [];
  for (let k = 1; k <= TRIPLES; k++) {
    if (k % TRIPLES_A_STEP === 0) yield;
    const triple = EVEN_STEPS.map((step) => order[Math.floor(((k * step) % 1) * order.length)]);
    const columns = triple.map((i) => points.xPx[i]);
    if (Math.max(...columns) - Math.min(...columns) < LEAST_SPAN * known.widthPx) continue;
    const parameters = circleThrough(taken(points, triple), known);
    if (!parameters) continue;
    const pose = poseOfParameters(parameters, known);
    const offsets = circleOffsets(compared, pose, lineRadiusMm(known));
    guesses.push({ parameters, cost: mixtureCost(offsets, GUESS_SD_PX) });
  }
  guesses.sort((a, b) => a.cost - b.cost);
  return guesses.slice(0, count).map((g) => g.parameters);
}

function evenly(order: readonly number[], count: number): number[] {
  const step = Math.max(1, order.length / count);
  return Array.from(
    { length: Math.min(count, order.length) },
    (_, i) => order[Math.floor(i * step)],
  );
}

function taken(points: LinePoints, at: readonly number[]): LinePoints {
  return { xPx: at.map((i) => points.xPx[i]), yPx: at.map((i) => points.yPx[i]) };
}

/** Yaw, roll, distance and height by which three points lie on the circle; null where none fits. */
function circleThrough(three: LinePoints, known: KnownOfCamera): Float64Array | null {
  const priors = posePriors(known);
  const full = (p: Float64Array): Float64Array =>
    Float64Array.of(0, known.downTiltDeg, p[0], p[1], p[2], p[3], 0);
  for (const far of START_DISTANCES) {
    const fit = leastSquaresMinimum(
      (p) => circleOffsets(three, poseOfParameters(full(p), known), lineRadiusMm(known)).rowsPx,
      startAt(three, far * known.edgeRadiusMm, known),
      {
        residualSd: GUESS_SD_PX,
        residualSdIs: 'given',
        priors: [
          { ...priors[2], index: 0 },
          { ...priors[3], index: 1 },
        ],
        parameterSizes: [1, 1, 100, 100],
        maxIterations: 12,
        stepTolerance: GUESS_STEP,
      },
    );
    if (!fit.ok) continue;
    const [, , distanceMm, heightMm] = fit.value;
    if (distanceMm > known.edgeRadiusMm && heightMm > 0) return full(fit.value);
  }
  return null;
}

/** Height that puts the circle's near point at the points' lowest row, for a distance. */
function startAt(points: LinePoints, distanceMm: number, known: KnownOfCamera): Float64Array {
  const lowRow = Math.max(...Array.from(points.yPx));
  const down =
    known.downTiltDeg * RAD_PER_DEG +
    Math.atan((lowRow - known.heightPx / 2) / believedFocalPx(known));
  const heightMm = Math.max(20, (distanceMm - known.edgeRadiusMm) * Math.tan(down));
  return Float64Array.of(0, 0, distanceMm, heightMm);
}
