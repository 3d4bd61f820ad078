import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { PlaneVector } from '../../quantities/vector.ts';
import { solveSymmetric } from '../fit/smallMatrix.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { FaceLine } from './faceLine.ts';
import { rowsPerOutwardMm } from './lineSamples.ts';
import { CROWN_SLOPE } from './rowMotion.ts';
import { STAND_LEAN_SD } from './templatePlace.ts';
import type { WheelView } from './wheelView.ts';

/**
 * How the rib's face moves out and in beyond what the leans say of it. Where it stands out farther
 * the edge looks lower, by κ, the slope of the line of sight, and what of that turns with the wheel
 * would be read as a tilt. But the line comes out with the face by as much, while a lean moves it
 * only by the crown: so the line tells.
 */
export interface FaceOutward {
  /** Radial run-out of the tread, once round: points at the wheel angle that stands out farthest, mm. */
  readonly runOutMm: PlaneVector;
  /**
   * What the stand's lean is off, radians: the wheel creeps along a lean as it is turned (creepWay),
   * so that a lean off by 5 mrad puts it a millimetre beside its place after one turn.
   */
  readonly leanOff: { readonly toward: number; readonly across: number };
}

/** Scatter of a block's row in one picture, px of a picture 1280 wide. */
const ROW_SD_PX = 0.5;
/** Rows farther off than so many deviations lie in a slot, and are weighed down. */
const WILD_SDS = 2;
/** Neighbours in time err together: of a turn's rows in a block so many count as independent. */
const INDEPENDENT_ROWS = 15;
const MIN_ROWS = 12;
/** Car tyres' shoulders slope by 2 to 8 % where the edge is (geometry of usual crown radii). */
const CROWN_SLOPE_SD = 0.03;
const PASSES = 3;
/** A tablet on an arm shakes in a second or two to and fro; the wheel does little in so much time, s. */
const SHAKE_LAG_S = 0.5;
const MIN_SHARED_BLOCKS = 3;
/** Median of the chi-square distribution with one degree of freedom. */
const CHI_SQUARE_MEDIAN = 0.4549;
/** Unknowns: run-out along 0 and 90, lean off toward and across, crown's slope off. */
const UNKNOWNS = 5;

/**
 * Least squares over the line's rows on the face, each block about its own mean:
 *
 *   away = p·(e₀ cos β + e₉₀ sin β + R φ (δ_toward sin α − δ_across cos α) + c·gap)
 *
 * p rows for a millimetre outward, β = α − φ, R the ball's radius, c what the crown's slope is off.
 * The gap turns with the wheel as the run-out does: how much of the line's way is crown hangs on
 * what is known of crowns, so all five come with their spreads.
 */
export function faceOutward(
  observations: EdgeObservations,
  line: FaceLine,
  view: WheelView,
  runOutSdMm: number,
): FaceOutward {
  const blocks = blockRows(observations, line, view);
  const ownSdPx = (ROW_SD_PX * view.sight.camera.pose.widthPx) / 1280;
  const rowSdPx = Math.sqrt(ownSdPx ** 2 + blocks.length * sharedVariancePx2(observations, line));
  const known = [runOutSdMm, runOutSdMm, STAND_LEAN_SD, STAND_LEAN_SD, CROWN_SLOPE_SD].map(
    (sd) => 1 / sd ** 2,
  );
  let found: ArrayLike<number> = new Float64Array(UNKNOWNS);
  for (let pass = 0; pass < PASSES; pass++) {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    known.forEach((k, j) => (normal[(UNKNOWNS + 1) * j] = k));
    // The rows come with a crown already taken off.
    const crownOff = CROWN_SLOPE - line.crownSlope;
    const right = Float64Array.of(0, 0, 0, 0, crownOff * known[4]);
    for (const block of blocks) addBlock(block, found, rowSdPx, normal, right);
    const solved = solveSymmetric(normal, right, UNKNOWNS);
    if (!solved) break;
    found = solved.solution;
  }
  return {
    runOutMm: { along0: found[0], along90: found[1] },
    leanOff: { toward: found[2], across: found[3] },
  };
}

/** The edge's heights as they would look without that. */
export function withoutOutward(
  observations: EdgeObservations,
  { runOutMm, leanOff }: FaceOutward,
  view: WheelView,
): EdgeObservations {
  const { azimuthsDeg, heightMm } = observations;
  const blocks = azimuthsDeg.length;
  const columnsAt = outwardColumns(observations, view);
  return {
    ...observations,
    heightMm: heightMm.map((height, at) => {
      const b = at % blocks;
      const [e0, e90, toward, across] = columnsAt(Math.floor(at / blocks), b);
      const outMm =
        runOutMm.along0 * e0 +
        runOutMm.along90 * e90 +
        leanOff.toward * toward +
        leanOff.across * across;
      return height + view.sightSlopes[b] * outMm;
    }),
  };
}

/** Way outward for one of run-out along 0 and 90 and of lean off toward and across, mm. */
function outwardColumns({ azimuthsDeg, turnDeg }: EdgeObservations, view: WheelView) {
  const ballRadiusMm = view.setup.stand.ballDiameterMm / 2;
  // From its mean place, as the creep itself is counted.
  const meanDeg = turnDeg.reduce((sum, t) => sum + t, 0) / Math.max(1, turnDeg.length);
  return (i: number, b: number): [number, number, number, number] => {
    const a = azimuthsDeg[b] * RAD_PER_DEG;
    const beta = a - turnDeg[i] * RAD_PER_DEG;
    const rolledMm = ballRadiusMm * (turnDeg[i] - meanDeg) * RAD_PER_DEG;
    return [Math.cos(beta), Math.sin(beta), rolledMm * Math.sin(a), -rolledMm * Math.cos(a)];
  };
}

/** The line's rows on the face in one block: for each sighting its columns, then the row, px. */
type BlockRows = readonly Float64Array[];

function blockRows(observations: EdgeObservations, line: FaceLine, view: WheelView): BlockRows[] {
  const { azimuthsDeg, timeS, leans, offsetMm, edgeRadiusMm } = observations;
  const blocks = azimuthsDeg.length;
  const columnsAt = outwardColumns(observations, view);
  return Array.from(azimuthsDeg, (azimuthDeg, b) => {
    const pxPerMm = rowsPerOutwardMm(view, azimuthDeg);
    const a = azimuthDeg * RAD_PER_DEG;
    const rows: Float64Array[] = [];
    for (let i = 0; i < timeS.length; i++) {
      const awayPx = line.awayPx[i * blocks + b];
      if (!line.expected[i * blocks + b] || awayPx !== awayPx) continue;
      const leanHere = leans[i].toward * Math.cos(a) + leans[i].across * Math.sin(a);
      const columns = [...columnsAt(i, b), offsetMm + edgeRadiusMm * leanHere];
      rows.push(Float64Array.of(...columns.map((c) => c * pxPerMm), awayPx));
    }
    return rows;
  }).filter((rows) => rows.length >= MIN_ROWS);
}

/**
 * Variance of what all rows of a picture have in common from one half second to another, px²: a
 * camera that shakes moves all blocks alike, so that together they know no more than one of them.
 */
function sharedVariancePx2({ timeS, azimuthsDeg }: EdgeObservations, line: FaceLine): number {
  const blocks = azimuthsDeg.length;
  const rows = Array.from(timeS, (_, i) => {
    const seen = Array.from(line.awayPx.subarray(i * blocks, (i + 1) * blocks))
      .filter((away, b) => line.expected[i * blocks + b] && away === away)
      .sort((x, y) => x - y);
    return seen.length >= MIN_SHARED_BLOCKS ? seen[seen.length >> 1] : NaN;
  });
  const squares: number[] = [];
  let later = 0;
  for (let i = 0; i < rows.length; i++) {
    while (later < rows.length && timeS[later] - timeS[i] < SHAKE_LAG_S) later++;
    if (later === rows.length) break;
    const moved = rows[later] - rows[i];
    if (moved === moved) squares.push(moved * moved);
  }
  if (squares.length === 0) return 0;
  return squares.sort((x, y) => x - y)[squares.length >> 1] / (2 * CHI_SQUARE_MEDIAN);
}

/** Adds a block's rows to the normal equations, about its own weighted means: its place is its own. */
function addBlock(
  rows: BlockRows,
  found: ArrayLike<number>,
  rowSdPx: number,
  normal: Float64Array,
  right: Float64Array,
): void {
  const one = Math.min(1, INDEPENDENT_ROWS / rows.length) / rowSdPx ** 2;
  const left = rows.map((row) => {
    let px = row[UNKNOWNS];
    for (let j = 0; j < UNKNOWNS; j++) px -= row[j] * found[j];
    return px;
  });
  const middle = [...left].sort((x, y) => x - y)[left.length >> 1];
  const weights = left.map((px) => one / Math.max(1, Math.abs(px - middle) / (WILD_SDS * rowSdPx)));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const means = rows[0].map(
    (_, j) => rows.reduce((sum, row, i) => sum + weights[i] * row[j], 0) / total,
  );
  rows.forEach((row, i) => {
    for (let j = 0; j < UNKNOWNS; j++) {
      const weighted = weights[i] * (row[j] - means[j]);
      right[j] += weighted * (row[UNKNOWNS] - means[UNKNOWNS]);
      for (let k = 0; k < UNKNOWNS; k++) normal[UNKNOWNS * j + k] += weighted * (row[k] - means[k]);
    }
  });
}
