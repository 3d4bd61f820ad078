import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { shareSeenWhereDue } from './lineDue.ts';
import { solvedCamera, type CameraStart, type SolvedCamera } from './solvedCamera.ts';

/**
 * Whether the line runs on the rib's face or, all round, along the floor of the groove under the edge.
 *
 * Both are level circles, and nothing of the line itself tells which: with the floor taken for the
 * face the camera comes out a groove's depth too far off. But then the edge, which stands farther
 * out than that camera thinks, looks lower, most where the sight is steep: it seems to lean toward
 * the camera by some 40 mrad, all through the turn, and does not lie on one leaning circle any more.
 * A stand leans by few mrad, an edge is a circle, a groove is some 6 mm deep, and a line along its
 * floor has the edge above it wherever it is seen: what all this says together decides, and how deep
 * the floor lies comes with it.
 */
export interface LineInset {
  /** How far inside of the edge the line lands, mm: 0 on the rib's face. */
  readonly insetMm: number;
  /** Standard deviation of that, mm; 0 on the face. */
  readonly insetSdMm: number;
}

/** Grooves of car tyres are 7 to 8 mm deep when new and worn down to 3 or 4 (common practice). */
const DEPTH_MM = 6.5;
const DEPTH_SD_MM = 1.5;
const TRIED_MM = [3.5, 5.5, 7.5, 9.5];
/** A person puts the line on the rib: along a floor all round it lies in one sweep of ten, as twice a log-likelihood. */
const SELDOM = 2 * Math.log(9);
/** What the right camera leaves of misfit (`TemplatePlace`): a line on the face that leaves little more is one. */
const USUAL_MISFIT = 4;
/** With the edge so often below the sheet where the line lies on its circle, that is no floor. */
const MOST_BELOW_SHARE = 0.15;
/**
 * A line on the face is seen wherever its edge stands below the sheet (drawn sweeps: in all such views, with
 * one down in the groove taken for one on the face in a quarter of them): under half of them, and the edge
 * does not stand where that camera has it. A laser that was off for as long leaves the edge below the sheet
 * at the sightings that there are, and so makes no floor of the face.
 */
const LEAST_SEEN_WHERE_DUE = 0.5;
/** Sightings within this of their block's row lie on the circle, px of a picture 1280 wide. */
const ON_CIRCLE_PX = 1.8;
/** Between the depths tried the parabola's own error counts, mm. */
const LEAST_INSET_SD_MM = 0.5;

interface Tried extends SolvedCamera {
  readonly insetMm: number;
  /** Twice the negative log-likelihood, beside that of a line on the face. */
  readonly cost: number;
}

export function cameraByLine(start: CameraStart): SolvedCamera & LineInset {
  const onFace = { ...solvedOnFace(start), insetMm: 0, insetSdMm: 0 };
  const isDoubtful = isLineMissing(start, onFace);
  const isUsual = onFace.observations.placeMisfit <= SELDOM + USUAL_MISFIT;
  if (onFace.isSolved && isUsual && !isDoubtful) return onFace;
  const tried = TRIED_MM.map((insetMm) => tryInset(start, insetMm));
  const costs = tried.map(({ cost }) => cost);
  const { insetMm, insetSdMm } = lowestOf(TRIED_MM, costs);
  if (!Number.isFinite(insetMm)) return onFace;
  const onFloor = tryInset(start, insetMm);
  const best = tried.reduce((a, b) => (b.cost < a.cost ? b : a), onFloor);
  const isBetter = isDoubtful ? best.isSolved : best.cost < onFace.observations.placeMisfit;
  if (onFace.isSolved && !isBetter) return onFace;
  if (!best.isSolved || edgeBelowShare(best) > MOST_BELOW_SHARE) return onFace;
  return { ...best, insetSdMm };
}

function isLineMissing({ recording }: CameraStart, solved: SolvedCamera): boolean {
  return (shareSeenWhereDue(recording, solved) ?? 1) < LEAST_SEEN_WHERE_DUE;
}

/** Where a wrong lean leaves too few sightings on the face by the edge's word: from all of them. */
function solvedOnFace(start: CameraStart): SolvedCamera {
  const solved = solvedCamera(start, 0);
  return solved.isSolved ? solved : solvedCamera(start, 0, true);
}

function tryInset(start: CameraStart, insetMm: number): Tried {
  const solved = solvedCamera(start, insetMm);
  const unusual = ((insetMm - DEPTH_MM) / DEPTH_SD_MM) ** 2;
  const cost = solved.isSolved ? solved.observations.placeMisfit + unusual + SELDOM : Infinity;
  return { ...solved, insetMm, cost };
}

/** Lowest point of the parabola through the least of evenly spaced costs and its neighbours. */
function lowestOf(atMm: readonly number[], costs: readonly number[]): LineInset {
  const least = costs.indexOf(Math.min(...costs));
  const stepMm = atMm[1] - atMm[0];
  const [before, here, after] = [costs[least - 1], costs[least], costs[least + 1]];
  const curvature = (before + after - 2 * here) / stepMm ** 2;
  if (!(curvature > 0) || !Number.isFinite(curvature)) {
    return { insetMm: Number.isFinite(here) ? atMm[least] : NaN, insetSdMm: DEPTH_SD_MM };
  }
  const part = Math.max(-0.5, Math.min(0.5, (before - after) / (2 * curvature * stepMm ** 2)));
  return {
    insetMm: atMm[least] + part * stepMm,
    // Twice a log-likelihood: its curvature is two over the variance.
    insetSdMm: Math.min(DEPTH_SD_MM, Math.max(LEAST_INSET_SD_MM, Math.sqrt(2 / curvature))),
  };
}

/** Share of the sightings on the line's circle whose edge stands below the sheet. */
function edgeBelowShare({ view, line, observations }: SolvedCamera): number {
  const { azimuthsDeg, leans, offsetMm, edgeRadiusMm } = observations;
  const blocks = azimuthsDeg.length;
  const onCirclePx = (ON_CIRCLE_PX * view.sight.camera.pose.widthPx) / 1280;
  let below = 0;
  let on = 0;
  line.awayPx.forEach((awayPx, at) => {
    if (!(Math.abs(awayPx) <= onCirclePx)) return;
    const azimuth = azimuthsDeg[at % blocks] * RAD_PER_DEG;
    const { toward, across } = leans[Math.floor(at / blocks)];
    const risenMm = edgeRadiusMm * (toward * Math.cos(azimuth) + across * Math.sin(azimuth));
    on++;
    if (offsetMm + risenMm < 0) below++;
  });
  return on > 0 ? below / on : 1;
}
