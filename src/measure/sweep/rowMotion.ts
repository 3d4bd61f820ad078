import { BAND_ROWS, Z_STEP_MM, zOfRowMm } from '../band/treadBand.ts';
import { riseAt, type Lean } from '../edge/leanFit.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { creepWay } from './wheelMotion.ts';

/**
 * How the rows of a block move when its edge does. They do not move alike: what lies lower swings
 * less far inward as the wheel leans, on a crowned tread it stands out farther, and the camera looks
 * down on it more steeply, so that a sideways way of the wheel moves it more. Some 25 mm below the
 * edge that comes to 4 to 6 % of a lean: matched as one rigid profile, the shift would hang on which
 * ribs the laser leaves free just then.
 */
export interface RowMotion {
  /** Rise of each row for one of the edge as the wheel leans, blocks × rows. */
  readonly risePerEdge: Float32Array;
  /** Slope κ of the line of sight at each row, blocks × rows: mm lower for a mm outward. */
  readonly slope: Float32Array;
  /** κ at the edge of each block. */
  readonly edgeSlope: Float32Array;
}

/** A car tyre's shoulder slopes by some 5 % (geometry of usual crown radii); the way to its middle less. */
export const CROWN_SLOPE = 0.05;

/** `inMm`: how far farther in than the ribs' faces each row lies, blocks × rows. */
export function rowMotion({ view, edge, tilt }: SweepRecording, inMm: Float32Array): RowMotion {
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  const { distanceMm, heightMm } = view.sight.camera.pose;
  const risePerEdge = new Float32Array(tilt.blocks * BAND_ROWS);
  const slope = new Float32Array(tilt.blocks * BAND_ROWS);
  const edgeSlope = new Float32Array(tilt.blocks);
  for (let b = 0; b < tilt.blocks; b++) {
    const edgeMm = edge.heightMm + riseAt(tilt.basis, edge.lean, b);
    const bearing = (view.layout.azimuthsDeg[b] + view.sight.sightBearingDeg) * RAD_PER_DEG;
    const nearMm = distanceMm * Math.cos(bearing) - radiusMm;
    const slopeAt = (zMm: number) => (view.sightSlopes[b] * (heightMm - zMm)) / heightMm;
    const gainAt = (zMm: number, inwardMm = 0) => {
      const outMm = CROWN_SLOPE * (edgeMm - zMm) - inwardMm;
      const aboveBallMm = view.lineAboveBallMm + edge.heightMm - (edgeMm - zMm);
      return (radiusMm + outMm + view.sightSlopes[b] * aboveBallMm) * (nearMm / (nearMm - outMm));
    };
    edgeSlope[b] = slopeAt(edgeMm);
    for (let r = 0; r < BAND_ROWS; r++) {
      const i = b * BAND_ROWS + r;
      risePerEdge[i] = gainAt(zOfRowMm(r), inMm[i]) / gainAt(edgeMm);
      slope[i] = slopeAt(zOfRowMm(r));
    }
  }
  return { risePerEdge, slope, edgeSlope };
}

/** What one frame's blocks did: the edge's whole rise in the picture and the way outward, mm. */
export interface BlockMotion {
  readonly upMm: Float64Array;
  readonly outwardMm: Float64Array;
}

/** Motion of every frame's blocks by its lean, and by the way on which the ball has carried the wheel. */
export function blockMotions(
  { frames, turn, edge, tilt, view }: SweepRecording,
  leans: readonly (Lean | null)[],
): (BlockMotion | null)[] {
  const { basis, blocks } = tilt;
  let turnDeg = 0;
  const turnsDeg = frames.map(({ turnIndex }) => {
    if (turnIndex !== null) turnDeg = turn.turnDeg[turnIndex];
    return turnDeg;
  });
  let last: Lean = { liftMm: 0, toward: 0, across: 0 };
  const absolute = leans.map((lean) => {
    last = lean ?? last;
    const [toward, across] = [last.toward + edge.lean.toward, last.across + edge.lean.across];
    return { liftMm: 0, toward, across };
  });
  const way = creepWay(absolute, turnsDeg, view.setup.stand.ballDiameterMm / 2);
  return leans.map((lean, f) => {
    if (!lean) return null;
    const upMm = Float64Array.from({ length: blocks }, (_, b) => riseAt(basis, lean, b));
    const outwardMm = upMm.map(
      (_, b) => way.toward[f] * basis.cos[b] + way.across[f] * basis.sin[b],
    );
    return { upMm, outwardMm };
  });
}

/**
 * Rows up by which each template row of a block has moved: so much of `lean` for the row's own rise and
 * so much of `out` for its own slope.
 */
function rowsOfMotion(
  motion: RowMotion,
  moved: BlockMotion,
  block: number,
): { lean: number; out: number } {
  const outMm = moved.outwardMm[block];
  const leanMm = moved.upMm[block] + motion.edgeSlope[block] * outMm;
  return { lean: leanMm / Z_STEP_MM, out: outMm / Z_STEP_MM };
}

/** A frame's profiles carried back to the template's place, each row by its own way. */
export function carriedBack(
  motion: RowMotion,
  moved: BlockMotion,
  profiles: Float32Array,
  out: Float32Array,
): Float32Array {
  const { risePerEdge, slope } = motion;
  out.fill(NaN);
  for (let b = 0; b < moved.upMm.length; b++) {
    const rows = rowsOfMotion(motion, moved, b);
    const start = b * BAND_ROWS;
    for (let r = 0; r < BAND_ROWS; r++) {
      const at = r - (rows.lean * risePerEdge[start + r] - rows.out * slope[start + r]);
      const i = Math.floor(at);
      if (i < 0 || i + 1 >= BAND_ROWS) continue;
      const part = at - i;
      out[start + r] = profiles[start + i] * (1 - part) + profiles[start + i + 1] * part;
    }
  }
  return out;
}

/** The template as a frame shows it: the way there of {@link carriedBack}. */
export function carriedTo(
  motion: RowMotion,
  moved: BlockMotion,
  template: Float32Array,
  out: Float32Array,
): Float32Array {
  const { risePerEdge, slope } = motion;
  out.fill(NaN);
  for (let b = 0; b < moved.upMm.length; b++) {
    const rows = rowsOfMotion(motion, moved, b);
    const start = b * BAND_ROWS;
    const edgeRows = moved.upMm[b] / Z_STEP_MM;
    for (let r = 0; r < BAND_ROWS; r++) {
      // The motion changes by a per cent over many rows: that of the row the edge's own way leads to.
      const near = start + Math.max(0, Math.min(BAND_ROWS - 1, Math.round(r + edgeRows)));
      const at = r + rows.lean * risePerEdge[near] - rows.out * slope[near];
      const i = Math.floor(at);
      if (i < 0 || i + 1 >= BAND_ROWS) continue;
      const part = at - i;
      out[start + r] = template[start + i] * (1 - part) + template[start + i + 1] * part;
    }
  }
  return out;
}
