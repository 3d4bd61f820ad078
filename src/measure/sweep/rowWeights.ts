import { BAND_ROWS, zOfRowMm } from '../band/treadBand.ts';
import { riseAt } from '../edge/leanFit.ts';
import { BAND_MARGIN_MM, type LightBand } from '../edge/lightBand.ts';
import type { SweepRecording } from './sweepRecording.ts';

/** Rib and groove on both sides of the edge, mm. */
const FULL_WEIGHT_MM = 8;
/** So much farther a row has half the weight, mm: the groove's other wall still counts, the next rib little. */
const HALF_WEIGHT_MM = 6;

/** Blocks step up and down about the edge by less, mm. */
const BARE_FROM_MM = 4;

/**
 * How much each row of the template counts, blocks × rows: all about the edge, and less the farther
 * from it. How far rows move beside the edge is known to some hundredths over a crowned tread with
 * grooves, which is nothing near by; where the laser hides the edge the far ribs still tell the lean.
 * A band of tape does not count where anything that was moulded tells the lean: a hand's error in
 * sticking it on turns with the wheel as an unbalance does, and the band outshines all else. Of a
 * tread of uneven blocks the far gaps are as good as the near one, and all together better; the bare
 * shoulder above has nothing but the lamp's light, which stands still.
 */
export function rowWeights(
  recording: SweepRecording,
  band: LightBand | null,
  isUneven: boolean,
): Float32Array {
  const { tilt, edge } = recording;
  const out = new Float32Array(tilt.blocks * BAND_ROWS);
  for (let b = 0; b < tilt.blocks; b++) {
    const edgeMm = edge.heightMm + riseAt(tilt.basis, edge.lean, b);
    for (let r = 0; r < BAND_ROWS; r++) {
      if (isUneven) {
        out[b * BAND_ROWS + r] = zOfRowMm(r) < edgeMm + BARE_FROM_MM ? 1 : 0;
        continue;
      }
      const beyondMm = Math.max(0, Math.abs(zOfRowMm(r) - edgeMm) - FULL_WEIGHT_MM);
      out[b * BAND_ROWS + r] = 1 / (1 + (beyondMm / HALF_WEIGHT_MM) ** 2);
    }
  }
  if (!band?.treadTells) return out;
  const taped = bandRows(recording, band);
  return out.map((weight, i) => weight * (1 - taped[i]));
}

/** 1 for each row of the template that the band covers or may cover somewhere round the wheel. */
export function bandRows(
  { tilt, edge }: SweepRecording,
  { bottomMm, topMm }: LightBand,
): Float32Array {
  const out = new Float32Array(tilt.blocks * BAND_ROWS);
  for (let b = 0; b < tilt.blocks; b++) {
    const riseMm = riseAt(tilt.basis, edge.lean, b);
    for (let r = 0; r < BAND_ROWS; r++) {
      const zMm = zOfRowMm(r) - riseMm;
      const isTaped = zMm > bottomMm - BAND_MARGIN_MM && zMm < topMm + BAND_MARGIN_MM;
      out[b * BAND_ROWS + r] = isTaped ? 1 : 0;
    }
  }
  return out;
}
