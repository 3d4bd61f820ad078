import { seededRandom } from './seededRandom.ts';
import type { DrawnBand, DrawnGroove, DrawnScene, DrawnTape } from './scene.ts';

/**
 * The tread unrolled: reflectance and solidity by wheel angle and height above the edge. Borders
 * are softened by about a pixel, so that one lookup a pixel is enough.
 *
 * From the top: sidewall, shoulder rib with slots, groove whose upper rim is the edge (height 0),
 * a rib with slots, a second groove, a third rib.
 */
export interface Tread {
  /** Luma under even light times solidity, and solidity × 255; rows × columns. */
  readonly solidLuma: Uint8Array;
  readonly solid: Uint8Array;
}

export const TREAD_STEP_DEG = 0.1;
export const TREAD_COLUMNS = 3600;
export const TREAD_STEP_MM = 0.4;
export const TREAD_TOP_MM = 70;
export const TREAD_ROWS = 350;
/** Top and bottom of each groove, mm from the edge. */
export const GROOVES_MM: readonly DrawnGroove[] = [
  { topMm: 0, bottomMm: -8 },
  { topMm: -29, bottomMm: -37 },
];
export const GROOVE_DEPTH_MM = 7;
export const FLOOR_LUMA = 24;
export const WALL_LUMA = 44;
export const SHOULDER_TOP_MM = 29;
/** A tape is stuck on the shoulder rib and ends just over the edge. */
export const TAPE_BOTTOM_MM = -0.5;

const RIB_LUMA = 96;
const SIDEWALL_LUMA = 58;
/** Softness of every border, mm. */
const SOFT_MM = 0.7;
const SLOT_WIDTH_DEG = 0.9;
/** The lengths of tread blocks that tyres mix so as not to hum, degrees; mean 5. */
const PITCHES_DEG = [4.3, 5, 5.7] as const;
const SPECKLE_STEP_DEG = 0.5;
const SPECKLE_STEP_MM = 3;
const SPECKLE = 0.22;

export function drawTread({
  seed,
  edgeRadiusMm,
  tapes,
  grooves = GROOVES_MM,
  blocks,
  band,
}: DrawnScene): Tread {
  const random = seededRandom(seed);
  const shoulderSlots = slotCentresDeg(random);
  const innerSlots = slotCentresDeg(random);
  const speckle = drawSpeckle(random);
  const solidLuma = new Uint8Array(TREAD_ROWS * TREAD_COLUMNS);
  const solid = new Uint8Array(TREAD_ROWS * TREAD_COLUMNS);
  const mmPerDeg = (edgeRadiusMm * Math.PI) / 180;
  for (let c = 0; c < TREAD_COLUMNS; c++) {
    const angleDeg = c * TREAD_STEP_DEG;
    const inShoulderSlot = slotShare(shoulderSlots, angleDeg, mmPerDeg);
    const inInnerSlot = slotShare(innerSlots, angleDeg, mmPerDeg);
    const crossed = blocks ? slotShare(shoulderSlots, angleDeg, mmPerDeg, blocks.crossWidthMm) : 0;
    const stepMm = blocks ? (blockAt(shoulderSlots, angleDeg) % 2 === 0 ? 1 : -1) * blocks.stepMm : 0;
    const borderMm = band ? bandShiftMm(band, angleDeg) : 0;
    for (let r = 0; r < TREAD_ROWS; r++) {
      const zMm = TREAD_TOP_MM - r * TREAD_STEP_MM;
      const onShoulder = zMm > -4 && zMm < SHOULDER_TOP_MM;
      const tape = onShoulder ? tapeShare(tapes, angleDeg, mmPerDeg) : { share: 0, luma: 0 };
      const slotted = zMm > -4 ? inShoulderSlot : inInnerSlot;
      const slot = zMm > SHOULDER_TOP_MM ? 0 : blocks ? crossed : slotted;
      const taped = band ? bandShare(band, zMm - borderMm) : 0;
      const open = (1 - grooveShare(zMm - stepMm, grooves)) * (1 - slot * (1 - tape.share));
      const here = open + (1 - open) * taped;
      const rubber =
        (zMm > SHOULDER_TOP_MM ? SIDEWALL_LUMA : RIB_LUMA) * (1 + speckle(angleDeg, zMm));
      const at = r * TREAD_COLUMNS + c;
      solid[at] = Math.round(255 * here);
      const under = here * (rubber + tape.share * (tape.luma - rubber));
      const shown = taped * (1 - tape.share);
      solidLuma[at] = Math.round(under + shown * ((band?.luma ?? 0) - under));
    }
  }
  return { solidLuma, solid };
}

/** Slots once round the wheel, pitches drawn and then fitted to the whole turn. */
function slotCentresDeg(random: () => number): number[] {
  const pitches = Array.from({ length: 72 }, () => PITCHES_DEG[Math.floor(3 * random())]);
  const scale = 360 / pitches.reduce((sum, p) => sum + p, 0);
  let at = 360 * random();
  return pitches.map((p) => (at += p * scale) % 360);
}

/** Share 0 to 1 by which a place lies between borders `half` to either side of a middle, mm. */
function between(awayMm: number, halfMm: number): number {
  return Math.max(0, Math.min(1, 0.5 + (halfMm - Math.abs(awayMm)) / SOFT_MM));
}

function grooveShare(zMm: number, grooves: readonly DrawnGroove[]): number {
  let share = 0;
  for (const { topMm, bottomMm } of grooves) {
    share = Math.max(share, between(zMm - (topMm + bottomMm) / 2, (topMm - bottomMm) / 2));
  }
  return share;
}

function shortWayDeg(a: number, b: number): number {
  return ((((b - a) % 360) + 540) % 360) - 180;
}

function slotShare(
  centres: readonly number[],
  angleDeg: number,
  mmPerDeg: number,
  widthMm = SLOT_WIDTH_DEG * mmPerDeg,
): number {
  let share = 0;
  for (const centre of centres) {
    const away = shortWayDeg(centre, angleDeg);
    if (Math.abs(away) > 2) continue;
    share = Math.max(share, between(away * mmPerDeg, widthMm / 2));
  }
  return share;
}

/** Which of the blocks between cross grooves lies at an angle. */
function blockAt(centres: readonly number[], angleDeg: number): number {
  return centres.filter((centre) => centre < angleDeg).length;
}

/** Over so much of the turn one end of the band covers the other, degrees. */
const JOIN_DEG = 5;

function bandShiftMm({ offSquareMm, highAtDeg, joinDeg, joinStepMm }: DrawnBand, angleDeg: number) {
  const once = offSquareMm * Math.cos(((angleDeg - highAtDeg) * Math.PI) / 180);
  return once + (Math.abs(shortWayDeg(joinDeg, angleDeg)) < JOIN_DEG / 2 ? joinStepMm : 0);
}

function bandShare({ topMm, bottomMm }: DrawnBand, zMm: number): number {
  return between(zMm - (topMm + bottomMm) / 2, (topMm - bottomMm) / 2);
}

function tapeShare(
  tapes: readonly DrawnTape[],
  angleDeg: number,
  mmPerDeg: number,
): { share: number; luma: number } {
  for (const tape of tapes) {
    const share = between(shortWayDeg(tape.middleDeg, angleDeg) * mmPerDeg, tape.widthMm / 2);
    if (share > 0) return { share, luma: tape.yuv[0] };
  }
  return { share: 0, luma: 0 };
}

/** Dust and wear: random values on a lattice, linear between; no two stretches of tread alike. */
function drawSpeckle(random: () => number): (angleDeg: number, zMm: number) => number {
  const columns = 360 / SPECKLE_STEP_DEG;
  const rows = Math.ceil((TREAD_ROWS * TREAD_STEP_MM) / SPECKLE_STEP_MM) + 2;
  const values = Float32Array.from({ length: columns * rows }, () => SPECKLE * (2 * random() - 1));
  return (angleDeg, zMm) => {
    const x = angleDeg / SPECKLE_STEP_DEG;
    const y = (TREAD_TOP_MM - zMm) / SPECKLE_STEP_MM;
    const [x0, y0] = [Math.floor(x), Math.floor(y)];
    const [wx, wy] = [x - x0, y - y0];
    const at = (i: number, j: number): number => values[j * columns + (i % columns)];
    const top = at(x0, y0) * (1 - wx) + at(x0 + 1, y0) * wx;
    const bottom = at(x0, y0 + 1) * (1 - wx) + at(x0 + 1, y0 + 1) * wx;
    return top * (1 - wy) + bottom * wy;
  };
}
