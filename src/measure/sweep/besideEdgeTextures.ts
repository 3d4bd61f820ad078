import { BAND_ROWS, rowOfZ, Z_STEP_MM, zOfRowMm } from '../band/treadBand.ts';
import { riseAt } from '../edge/leanFit.ts';
import { absoluteLean, type FrameRecord, type SweepRecording } from './sweepRecording.ts';

/** Rows looked at above and below the edge, mm: ribs beside it. */
const REACH_ABOVE_MM = 30;
const REACH_BELOW_MM = 40;
/** The edge's own blur says nothing, mm. */
const EDGE_HALF_MM = 2.5;
/** The line's glow stands, and outweighs dust, mm. */
const GLOW_HALF_MM = 6;
/** Deviations above this many of the usual are clipped: one tape must not outvote the tread. */
const CLIP_SD = 2.5;
/** A row of a block must be known in this share of the pictures. */
const MIN_SEEN_SHARE = 0.25;

/** Rows of a block's texture: from the highest above the edge down. */
export const BESIDE_ROWS = Math.round((REACH_ABOVE_MM + REACH_BELOW_MM) / Z_STEP_MM) + 1;

/**
 * What of each block's profile changes as the wheel turns, by height above the edge as it was followed in
 * that picture; blocks × rows from the top, 0 where unknown.
 */
export function besideEdgeTextures(
  recording: SweepRecording,
  frames: readonly FrameRecord[],
): Float32Array[] {
  const textures = frames.map((frame) => besideEdge(recording, frame));
  const size = recording.tilt.blocks * BESIDE_ROWS;
  const mean = new Float64Array(size);
  const count = new Float64Array(size);
  for (const texture of textures) {
    texture.forEach((luma, i) => {
      if (luma !== luma) return;
      mean[i] += luma;
      count[i]++;
    });
  }
  let [sum, known] = [0, 0];
  for (const texture of textures) {
    for (let i = 0; i < size; i++) {
      const isKnown = texture[i] === texture[i] && count[i] >= MIN_SEEN_SHARE * frames.length;
      texture[i] = isKnown ? texture[i] - mean[i] / count[i] : 0;
      if (isKnown) known++;
      sum += Math.abs(texture[i]);
    }
  }
  // Mean |x| of a normal distribution is σ/1.25.
  const limit = (CLIP_SD * 1.25 * sum) / Math.max(1, known);
  for (const texture of textures)
    for (let i = 0; i < size; i++) texture[i] = Math.max(-limit, Math.min(limit, texture[i]));
  return textures;
}

function besideEdge(recording: SweepRecording, { profiles, lean }: FrameRecord): Float32Array {
  const { tilt, edge } = recording;
  const absolute = absoluteLean(recording, lean!.lean);
  const out = new Float32Array(tilt.blocks * BESIDE_ROWS).fill(NaN);
  for (let b = 0; b < tilt.blocks; b++) {
    const edgeMm = edge.heightMm + riseAt(tilt.basis, absolute, b);
    const top = rowOfZ(edgeMm + REACH_ABOVE_MM);
    const whole = Math.floor(top);
    const part = top - whole;
    for (let r = 0; r < BESIDE_ROWS; r++) {
      const row = whole + r;
      if (row < 0 || row + 1 >= BAND_ROWS) continue;
      if (Math.abs(REACH_ABOVE_MM - r * Z_STEP_MM) < EDGE_HALF_MM) continue;
      if (Math.abs(zOfRowMm(row)) < GLOW_HALF_MM) continue;
      const at = b * BAND_ROWS + row;
      out[b * BESIDE_ROWS + r] = profiles[at] * (1 - part) + profiles[at + 1] * part;
    }
  }
  return out;
}
