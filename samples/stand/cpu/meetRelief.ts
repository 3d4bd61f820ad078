import { grooveDepthMm } from '../shape/treadPattern.ts';
import { DEPTH_RANGE_MM } from '../shape/skinTexels.ts';
import { lateralWaveMm } from '../view/tyreFrame.ts';
import { RELIEF_STEPS, RELIEF_STEP_MM } from '../view/lighting.ts';
import type { StandModel } from '../view/standModel.ts';
import type { TyreMeeter } from './meetTyre.ts';

/** Where a line of sight ends in grooves and cuts. */
interface Relief {
  /** Depth under the skin at which it ends; 0 on the face of a rib. */
  depthMm: number;
  /** Ended at a wall rather than at a floor. */
  wall: boolean;
  /** The last place looked at lies over a groove round the wheel. */
  overGroove: boolean;
  /** Went out through a cut again without meeting anything. */
  passed: boolean;
  /** Column and row of the tread map, fractional. */
  column: number;
  row: number;
}

export interface ReliefMeeter {
  readonly relief: Relief;
  /** Goes on from the skin at `meeter.found` into what is cut there. */
  goOn(meeter: TyreMeeter): void;
  /** Depth of the cut at the place of `meeter.found`. */
  depthAt(meeter: TyreMeeter): number;
}

// Test runners turn imported names into property reads, which the loop over pixels would feel.
const STEP_MM = RELIEF_STEP_MM;
const STEPS = RELIEF_STEPS;
const grooveDepth = grooveDepthMm;
/** Shallower than this a cut is taken as the face: its ramp is half a texel. */
const FACE_MM = 0.15;
const WALL_MM = 0.5;

export function reliefMeeter(model: StandModel): ReliefMeeter {
  const { tread, scene } = model;
  const { columns, rows, texels, fromWayMm, wayPerRowMm } = tread;
  const perDepth = DEPTH_RANGE_MM / 255;
  const waves = Float64Array.from({ length: 720 }, (_, i) => lateralWaveMm(scene, i / 2));
  const { grooves } = scene.tyre;
  const relief: Relief = {
    ...{ depthMm: 0, wall: false, overGroove: false, passed: false, column: 0, row: 0 },
  };

  // Where the last line of sight entered: its steps lie a few degrees of azimuth from there.
  const entry = new Float64Array(4);

  const depthAt = (meeter: TyreMeeter): number => {
    const { found } = meeter;
    const turn = Math.atan2(-found.y, found.x) / (2 * Math.PI);
    entry[0] = found.x;
    entry[1] = found.y;
    entry[2] = 1 / (found.x * found.x + found.y * found.y);
    entry[3] = turn < 0 ? turn + 1 : turn;
    return depthAtTurn(meeter, entry[3]);
  };

  /** The same near the last entry: the azimuth from there by its tangent. */
  const depthNear = (meeter: TyreMeeter): number => {
    const { x, y } = meeter.found;
    const along = (x * entry[0] + y * entry[1]) * entry[2];
    const across = (x * entry[1] - y * entry[0]) * entry[2];
    const tangent = across / along;
    const turn = entry[3] + (tangent - (tangent * tangent * tangent) / 3) / (2 * Math.PI);
    return depthAtTurn(meeter, turn < 0 ? turn + 1 : turn >= 1 ? turn - 1 : turn);
  };

  const depthAtTurn = ({ found }: TyreMeeter, turn: number): number => {
    const wayMm = found.wayMm - waves[(turn * 720) | 0];
    // A texel's value holds at column·360°/columns.
    const column = turn * columns;
    const row = Math.max(0, Math.min(rows - 1.001, (wayMm - fromWayMm) / wayPerRowMm));
    relief.column = column;
    relief.row = row;
    const c0 = column | 0;
    const r0 = row | 0;
    const wc = column - c0;
    const wr = row - r0;
    const at = 4 * (r0 * columns + (c0 % columns)) + 3;
    const right = 4 * (r0 * columns + ((c0 + 1) % columns)) + 3;
    const down = 4 * columns;
    const top = texels[at] * (1 - wc) + texels[right] * wc;
    const bottom = texels[at + down] * (1 - wc) + texels[right + down] * wc;
    const cut = (top * (1 - wr) + bottom * wr) * perDepth;
    const groove = grooveDepth(grooves, wayMm);
    relief.overGroove = groove > cut;
    return groove > cut ? groove : cut;
  };

  return {
    relief,
    depthAt,
    goOn(meeter) {
      relief.depthMm = 0;
      relief.wall = false;
      relief.passed = false;
      if (depthAt(meeter) < FACE_MM) return;
      const { found } = meeter;
      let along = found.along;
      let before = 0;
      for (let step = 0; step < STEPS; step++) {
        along += STEP_MM;
        meeter.probe(along);
        if (found.outside > 0.02) {
          relief.passed = true;
          return;
        }
        const under = -found.outside - depthNear(meeter);
        if (under < 0) {
          before = under;
          continue;
        }
        // The two last steps stand on either side of it.
        refine(meeter, along, before, under);
        return;
      }
      relief.depthMm = -found.outside;
    },
  };

  function refine(meeter: TyreMeeter, along: number, before: number, under: number): void {
    let low = along - STEP_MM;
    let high = along;
    let atLow = before;
    let atHigh = under;
    for (let round = 0; round < 4; round++) {
      const middle = low + (high - low) * Math.max(0.1, Math.min(0.9, atLow / (atLow - atHigh)));
      meeter.probe(middle);
      const here = -meeter.found.outside - depthNear(meeter);
      if (here < 0) {
        low = middle;
        atLow = here;
      } else {
        high = middle;
        atHigh = here;
      }
    }
    relief.depthMm = Math.max(0, -meeter.found.outside);
    // Half a millimetre on it is well inside the rubber where it met a wall.
    meeter.probe(high + 0.35);
    relief.wall = -meeter.found.outside - depthNear(meeter) > WALL_MM;
    meeter.probe(high);
    depthNear(meeter);
  }
}
