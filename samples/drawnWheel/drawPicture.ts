import type { YuvPicture } from '../../src/contract/picture.ts';
import type { DrawnGroove, DrawnScene } from './scene.ts';
import { NODE_PX, type SurfaceNodes } from './surfaceNodes.ts';
import {
  FLOOR_LUMA,
  GROOVE_DEPTH_MM,
  GROOVES_MM,
  SHOULDER_TOP_MM,
  TAPE_BOTTOM_MM,
  TREAD_COLUMNS,
  TREAD_ROWS,
  TREAD_STEP_DEG,
  TREAD_STEP_MM,
  TREAD_TOP_MM,
  WALL_LUMA,
  type Tread,
} from './tread.ts';

// Test runners turn imported names into property reads, which the loop over pixels would feel.
const NODE = NODE_PX;
const COLUMNS = TREAD_COLUMNS;
const PER_DEG = 1 / TREAD_STEP_DEG;
const PER_MM = 1 / TREAD_STEP_MM;
const TOP_MM = TREAD_TOP_MM;
const BOTTOM_MM = TREAD_TOP_MM - (TREAD_ROWS - 2) * TREAD_STEP_MM;
const TAPE_MM = { from: TAPE_BOTTOM_MM, to: SHOULDER_TOP_MM };
const GROOVES = GROOVES_MM;
const DEPTH_MM = GROOVE_DEPTH_MM;
const UNDER_LUMA = { wall: WALL_LUMA, floor: FLOOR_LUMA };

const BACKGROUND_LUMA = 112;
/** Luma and colour differences for one step of light in the laser's channel (BT.601). */
const LASER_YUV = {
  green: { y: 0.587, u: -0.331, v: -0.419 },
  red: { y: 0.299, u: -0.169, v: 0.5 },
} as const;
/** Black floors send back half of what a dusty rib does. */
const FLOOR_LIT = 0.5;
/** Part of the light that the middle of the view gets more than its sides. */
const LAMP_FALL = 0.35;

/** What one place of the picture shows: luma and colour differences; room for one result. */
interface Spot {
  luma: number;
  u: number;
  v: number;
}

/** One picture of the wheel, I420, full range. `noise` holds deviates to be drawn from at random. */
export function drawPicture(
  scene: DrawnScene,
  tread: Tread,
  nodes: SurfaceNodes,
  turnDeg: number,
  timeS: number,
  noise: { readonly table: Int8Array; readonly random: () => number },
): YuvPicture {
  const { widthPx, heightPx } = scene.camera;
  const y = new Uint8ClampedArray(widthPx * heightPx);
  const chromaStride = widthPx >> 1;
  const u = new Uint8ClampedArray(chromaStride * (heightPx >> 1));
  const v = new Uint8ClampedArray(chromaStride * (heightPx >> 1));
  const laserPeak = timeS < scene.laserOffAtS ? scene.laserPeak : 0;
  const spot: Spot = { luma: 0, u: 0, v: 0 };
  for (let row = 0; row < heightPx; row++) {
    let fromNoise = Math.floor(noise.random() * (noise.table.length - 3 * widthPx));
    for (let column = 0; column < widthPx; column++) {
      spotAt(scene, tread, nodes, column, row, turnDeg, laserPeak, spot);
      y[row * widthPx + column] = spot.luma + noise.table[fromNoise++];
      if ((row & 1) === 0 || (column & 1) === 0) continue;
      const chroma = (row >> 1) * chromaStride + (column >> 1);
      u[chroma] = 128 + spot.u + 0.5 * noise.table[fromNoise++];
      v[chroma] = 128 + spot.v + 0.5 * noise.table[fromNoise++];
    }
  }
  const bytes = (plane: Uint8ClampedArray): Uint8Array => new Uint8Array(plane.buffer);
  return {
    ...{ widthPx, heightPx, timeS, y: bytes(y), yStride: widthPx, u: bytes(u), v: bytes(v) },
    ...{ chromaStride, chromaStep: 1, chromaShift: 1, fullRange: true },
  };
}

function fill(spot: Spot, luma: number): void {
  spot.luma = luma;
  spot.u = 0;
  spot.v = 0;
}

/** The surface between four nodes of the net, linear both ways, and what it shows. */
function spotAt(
  scene: DrawnScene,
  tread: Tread,
  nodes: SurfaceNodes,
  column: number,
  row: number,
  turnDeg: number,
  laserPeak: number,
  spot: Spot,
): void {
  const { values } = nodes;
  const x0 = Math.floor((column + 0.5) / NODE);
  const y0 = Math.floor((row + 0.5) / NODE);
  const wx = (column + 0.5) / NODE - x0;
  const wy = (row + 0.5) / NODE - y0;
  const i = (y0 * nodes.columns + x0) * 4;
  const j = i + nodes.columns * 4;
  const zMm = mixed(values, i + 1, j + 1, wx, wy);
  // Beside the wheel there is a corner without a meeting; above and below it no tread.
  if (zMm !== zMm || zMm > TOP_MM) return fill(spot, BACKGROUND_LUMA);
  if (zMm < BOTTOM_MM) return fill(spot, UNDER_LUMA.floor);
  const azimuthDeg = mixed(values, i, j, wx, wy);
  const aboveLaserMm = mixed(values, i + 2, j + 2, wx, wy);
  const slope = mixed(values, i + 3, j + 3, wx, wy);
  surfaceSpot(scene, tread, azimuthDeg, turnDeg, zMm, aboveLaserMm, slope, laserPeak, spot);
}

/** Between the corners at `i`, its right neighbour, `j` below it and that one's. */
function mixed(values: Float64Array, i: number, j: number, wx: number, wy: number): number {
  const top = values[i] * (1 - wx) + values[i + 4] * wx;
  return top + wy * (values[j] * (1 - wx) + values[j + 4] * wx - top);
}

/** `azimuthDeg` on the wheel before its turn; heights above the edge and above the laser plane. */
function surfaceSpot(
  scene: DrawnScene,
  tread: Tread,
  azimuthDeg: number,
  turnDeg: number,
  zMm: number,
  aboveLaserMm: number,
  slope: number,
  laserPeak: number,
  spot: Spot,
): void {
  const wheelDeg = (((azimuthDeg - turnDeg) % 360) + 360) % 360;
  const x = wheelDeg * PER_DEG;
  const y = (TOP_MM - zMm) * PER_MM;
  const solid = bilinear(tread.solid, x, y) / 255;
  const lamp = 1 - LAMP_FALL + LAMP_FALL * Math.cos((azimuthDeg * Math.PI) / 180);
  fill(spot, bilinear(tread.solidLuma, x, y));
  let lit = onSheet(scene, aboveLaserMm) * solid;
  if (solid < 1) {
    const wallMm = depthOfLowerWallMm(scene.grooves ?? GROOVES, zMm, slope);
    const depthMm = Math.min(DEPTH_MM, wallMm);
    spot.luma += (1 - solid) * (wallMm < DEPTH_MM ? UNDER_LUMA.wall : UNDER_LUMA.floor);
    lit += (1 - solid) * FLOOR_LIT * onSheet(scene, aboveLaserMm - slope * depthMm);
  }
  spot.luma *= lamp;
  if (zMm > TAPE_MM.from && zMm < TAPE_MM.to) addTapeColour(scene, wheelDeg, lamp, spot);
  const light = lit * laserPeak;
  const laser = LASER_YUV[scene.laserColour];
  spot.luma += laser.y * light;
  spot.u += laser.u * light;
  spot.v += laser.v * light;
}

function addTapeColour(scene: DrawnScene, wheelDeg: number, lamp: number, spot: Spot): void {
  const mmPerDeg = (scene.edgeRadiusMm * Math.PI) / 180;
  for (const tape of scene.tapes) {
    const awayDeg = ((((wheelDeg - tape.middleDeg) % 360) + 540) % 360) - 180;
    if (Math.abs(awayDeg) * mmPerDeg > tape.widthMm / 2) continue;
    spot.u += lamp * tape.yuv[1];
    spot.v += lamp * tape.yuv[2];
  }
}

/** Light of the sheet at a height above its middle, 1 at the crest. */
function onSheet(scene: DrawnScene, heightMm: number): number {
  const widths = heightMm / scene.laserWidthMm;
  return Math.abs(widths) > 5 ? 0 : Math.exp(-0.5 * widths * widths);
}

/** How deep a line of sight gets in a groove until it meets the lower wall; endless in a slot. */
function depthOfLowerWallMm(
  grooves: readonly DrawnGroove[],
  zMm: number,
  slope: number,
): number {
  for (const groove of grooves) {
    if (zMm < groove.topMm + 0.5 && zMm > groove.bottomMm - 0.5) {
      return Math.max(0, (zMm - groove.bottomMm) / slope);
    }
  }
  return Infinity;
}

function bilinear(table: Uint8Array, x: number, y: number): number {
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  const wx = x - x0;
  const wy = y - y0;
  const left = x0 % COLUMNS;
  const right = (x0 + 1) % COLUMNS;
  const row = y0 * COLUMNS;
  const top = table[row + left] * (1 - wx) + table[row + right] * wx;
  const next = row + COLUMNS;
  return top * (1 - wy) + (table[next + left] * (1 - wx) + table[next + right] * wx) * wy;
}
