import type { StandScene } from '../scene/standScene.ts';
import { blockGaps, type BlockGap } from './blockGaps.ts';
import { latticeNoise, noiseAt, type LatticeNoise } from './latticeNoise.ts';
import { raggedBorderMm } from './shoulderBand.ts';
import { DEPTH_RANGE_MM, DUST, type TreadMap } from './skinTexels.ts';
import { stickTape } from './shoulderTape.ts';
import { ribCuts, treadPattern, WALL_STEEPNESS, type CrossCut } from './treadPattern.ts';
import { profileLengthMm, type TyreProfile } from './tyreProfile.ts';

/** Nothing below is ever seen from above. */
const LOWEST_WAY_MM = -118;
const COLUMNS = 4096;
const ROWS = 640;
/** Softness of a cut's border: one texel. */
const SOFT_MM = 0.5;

/** Reflectances, linear. */
const RUBBER = [0.038, 0.037, 0.036] as const;
const SIDEWALL = [0.026, 0.0255, 0.025] as const;
/** Dull white cloth tape. */
const BAND = [0.46, 0.45, 0.42] as const;

interface Layers {
  readonly fine: LatticeNoise;
  readonly grain: LatticeNoise;
  readonly patches: LatticeNoise;
  readonly streaks: LatticeNoise;
}

export function treadMap(scene: StandScene, profile: TyreProfile): TreadMap {
  const wayPerRowMm = (profileLengthMm(profile) - LOWEST_WAY_MM) / (ROWS - 1);
  const depthMm = new Float32Array(COLUMNS * ROWS);
  drawCuts(scene, depthMm, wayPerRowMm);
  const texels = new Uint8Array(4 * COLUMNS * ROWS);
  const layers: Layers = {
    fine: latticeNoise(scene.seed + 21, 2048, 320),
    grain: latticeNoise(scene.seed + 22, 420, 64),
    patches: latticeNoise(scene.seed + 23, 23, 9),
    streaks: latticeNoise(scene.seed + 24, 90, 260),
  };
  for (let row = 0; row < ROWS; row++) {
    const wayMm = LOWEST_WAY_MM + row * wayPerRowMm;
    for (let column = 0; column < COLUMNS; column++) {
      paint(scene, layers, texels, depthMm, row, column, wayMm);
    }
  }
  stickBand(scene, texels, wayPerRowMm);
  const map = { columns: COLUMNS, rows: ROWS, fromWayMm: LOWEST_WAY_MM, wayPerRowMm, texels };
  for (const tape of scene.tyre.tapes) stickTape(scene, profile, map, tape);
  return map;
}

function drawCuts(scene: StandScene, depthMm: Float32Array, wayPerRowMm: number): void {
  const pattern = treadPattern(scene);
  const cuts = ribCuts(scene);
  const mmPerColumn = (2 * Math.PI * scene.wheel.edgeRadiusMm) / COLUMNS;
  for (const gap of blockGaps(scene)) drawGap(depthMm, gap, wayPerRowMm);
  const ribs = [
    [pattern.shoulderStartDeg, cuts.shoulder],
    [pattern.innerStartDeg, cuts.inner],
    [pattern.lowerStartDeg, cuts.lower],
  ] as const;
  for (const [starts, list] of ribs) {
    starts.forEach((startDeg, k) => {
      const next = k + 1 < starts.length ? starts[k + 1] : starts[0] + 360;
      for (const cut of list) {
        drawCut(depthMm, cut, startDeg, next - startDeg, wayPerRowMm, mmPerColumn);
      }
    });
  }
}

/** One cut: deepest along its middle line, softened by a texel at its borders and ends. */
function drawCut(
  depthMm: Float32Array,
  cut: CrossCut,
  startDeg: number,
  pitchDeg: number,
  wayPerRowMm: number,
  mmPerColumn: number,
): void {
  const first = Math.max(0, Math.ceil((cut.fromWayMm - LOWEST_WAY_MM) / wayPerRowMm));
  const last = Math.min(ROWS - 1, Math.floor((cut.toWayMm - LOWEST_WAY_MM) / wayPerRowMm));
  const half = cut.widthMm / 2;
  const reach = Math.ceil((half + SOFT_MM) / mmPerColumn);
  for (let row = first; row <= last; row++) {
    const wayMm = LOWEST_WAY_MM + row * wayPerRowMm;
    const share = (wayMm - cut.fromWayMm) / (cut.toWayMm - cut.fromWayMm);
    const zigzag = cut.zigzagMm * triangle(wayMm / 5);
    const middleDeg = startDeg + pitchDeg * (cut.atFrom + (cut.atTo - cut.atFrom) * share);
    const middle = (middleDeg / 360) * COLUMNS + zigzag / mmPerColumn;
    for (let c = Math.floor(middle) - reach; c <= middle + reach + 1; c++) {
      const away = Math.abs(c - middle) * mmPerColumn;
      const depth = cut.depthMm * Math.max(0, Math.min(1, 0.5 + (half - away) / SOFT_MM));
      const at = row * COLUMNS + (((c % COLUMNS) + COLUMNS) % COLUMNS);
      if (depth > depthMm[at]) depthMm[at] = depth;
    }
  }
}

/** One piece of a gap between rows of blocks; its walls lean as a groove's do. */
function drawGap(depthMm: Float32Array, gap: BlockGap, wayPerRowMm: number): void {
  const { fromDeg, toDeg, topWayMm, bottomWayMm } = gap;
  const first = Math.max(0, Math.floor((bottomWayMm - LOWEST_WAY_MM) / wayPerRowMm));
  const last = Math.min(ROWS - 1, Math.ceil((topWayMm - LOWEST_WAY_MM) / wayPerRowMm));
  for (let row = first; row <= last; row++) {
    const wayMm = LOWEST_WAY_MM + row * wayPerRowMm;
    const inside = Math.min(topWayMm - wayMm, wayMm - bottomWayMm);
    const depth = Math.min(gap.depthMm, Math.max(0, inside) * WALL_STEEPNESS);
    for (let c = Math.ceil((fromDeg / 360) * COLUMNS); c < (toDeg / 360) * COLUMNS; c++) {
      const at = row * COLUMNS + (c % COLUMNS);
      if (depth > depthMm[at]) depthMm[at] = depth;
    }
  }
}

function triangle(x: number): number {
  return 4 * Math.abs(x - Math.floor(x) - 0.5) - 1;
}

function paint(
  scene: StandScene,
  layers: Layers,
  texels: Uint8Array,
  depthMm: Float32Array,
  row: number,
  column: number,
  wayMm: number,
): void {
  const index = row * COLUMNS + column;
  const across = column / COLUMNS;
  const down = row / ROWS;
  const onTread = wayMm < scene.tyre.treadHalfWidthMm + 16;
  const fine = noiseAt(layers.fine, across, down);
  const grain = noiseAt(layers.grain, across, down);
  const patches = noiseAt(layers.patches, across, down);
  const streaks = noiseAt(layers.streaks, across, down);
  let shade = 1 + 0.16 * fine + 0.14 * grain + 0.16 * patches + 0.08 * streaks;
  if (!onTread) shade *= ringShade(wayMm - scene.tyre.treadHalfWidthMm, across, scene.seed);
  // Dust lies in patches, and where nothing rubs it off: in the cuts and beside them.
  const lies = depthMm[index] > 0.5 ? 1.3 : onTread ? 0.75 : 0.55;
  const cover =
    scene.tyre.dust * lies * (0.6 + 0.28 * patches + 0.2 * grain + 0.25 * fine + 0.12 * streaks);
  const dusty = Math.max(0, Math.min(0.9, cover));
  const rubber = onTread ? RUBBER : SIDEWALL;
  for (let k = 0; k < 3; k++) {
    const reflectance = rubber[k] * Math.max(0.2, shade) * (1 - dusty) + DUST[k] * dusty;
    texels[4 * index + k] = Math.round(255 * Math.sqrt(Math.min(1, reflectance)));
  }
  texels[4 * index + 3] = Math.round((255 * depthMm[index]) / DEPTH_RANGE_MM);
}

/** Mould rings, a row of bars and a few raised blocks on the sidewall; `beyondMm` past the tread. */
function ringShade(beyondMm: number, across: number, seed: number): number {
  let shade = 1;
  for (const ring of [24, 27, 62, 92]) if (Math.abs(beyondMm - ring) < 0.6) shade *= 1.8;
  if (Math.abs(beyondMm - 40) < 9) {
    const turn = across * 8 + seed * 0.13;
    const part = turn - Math.floor(turn);
    // Raised blocks in place of letters: three groups a half turn, no word.
    const inGroup = part > 0.1 && part < 0.42;
    const bar = part * 46;
    if (inGroup && bar - Math.floor(bar) < 0.62) shade *= Math.abs(beyondMm - 40) < 7.5 ? 1.5 : 2.2;
  }
  return shade;
}

/** Dull white tape along the shoulder, over all that is cut there. */
function stickBand(scene: StandScene, texels: Uint8Array, wayPerRowMm: number): void {
  const { band, edgeAboveMiddleMm } = scene.tyre;
  if (!band) return;
  const border = raggedBorderMm(scene, band);
  const stains = latticeNoise(scene.seed + 53, 160, 90);
  for (let column = 0; column < COLUMNS; column++) {
    const from = edgeAboveMiddleMm + border((column / COLUMNS) * 360);
    const first = Math.max(0, Math.floor((from - LOWEST_WAY_MM) / wayPerRowMm));
    const last = Math.min(ROWS - 1, Math.ceil((from + band.widthMm - LOWEST_WAY_MM) / wayPerRowMm));
    for (let row = first; row <= last; row++) {
      const wayMm = LOWEST_WAY_MM + row * wayPerRowMm;
      const inside = Math.min(wayMm - from, from + band.widthMm - wayMm) / wayPerRowMm;
      const cover = Math.max(0, Math.min(1, 0.5 + inside));
      const at = 4 * (row * COLUMNS + column);
      const stain = 0.5 + 0.5 * noiseAt(stains, column / COLUMNS, row / ROWS);
      const dirty = Math.min(0.95, band.dirt * (0.6 + 0.8 * stain));
      for (let k = 0; k < 3; k++) {
        const under = (texels[at + k] / 255) ** 2;
        const tape = BAND[k] * (1 - dirty) + DUST[k] * dirty;
        texels[at + k] = Math.round(255 * Math.sqrt(under + (tape - under) * cover));
      }
      texels[at + 3] = Math.round(texels[at + 3] * (1 - cover));
    }
  }
}
