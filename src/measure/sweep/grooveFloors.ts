import { BAND_ROWS, Z_STEP_MM } from '../band/treadBand.ts';

/** Depth of a groove's floor below the ribs, mm: 8 on a new car tyre, 1.6 where the law takes it off the road. */
const FLOOR_MM = 6;
/** Grooves are 5 to 12 mm wide: the rib on either side and the floor between lie this near. */
const REACH_ROWS = Math.round(10 / Z_STEP_MM);
/** A groove is darker than its ribs by this share. */
const MIN_CONTRAST = 0.1;
/** A lip is blurred over so much, two pixels of a small picture. */
const LIP_ROWS = Math.round(2 / Z_STEP_MM);

/**
 * How far farther in than the ribs' faces that lies which each row of a template shows, blocks × rows, mm.
 * What is dark between brighter ribs is a groove's floor, and up to the lower rib goes its wall. The lip of
 * the upper rib hides what is behind it from a camera that looks down: it moves as the face does, and only
 * what is dark already a little way above is floor.
 *
 * What lies farther in moves less for the same lean, floors by 4 %. Taken for the face, the grooves held
 * every match back by half of a per cent.
 */
export function grooveFloors(template: Float32Array): Float32Array {
  const inMm = new Float32Array(template.length);
  for (let start = 0; start < template.length; start += BAND_ROWS) {
    const block = template.subarray(start, start + BAND_ROWS);
    for (let r = 0; r < BAND_ROWS; r++) {
      const { ribLuma, floorLuma, behindLipLuma } = besideRow(block, r);
      if (!(ribLuma - floorLuma > MIN_CONTRAST * ribLuma)) continue;
      inMm[start + r] = (FLOOR_MM * Math.max(0, ribLuma - behindLipLuma)) / (ribLuma - floorLuma);
    }
  }
  return inMm;
}

/**
 * The darker one of the ribs above and below a row and the darkest near it, the row itself counting as all
 * three; and the row's own luma, or what a lip leaves of it: the darkest above, where that is lighter.
 */
function besideRow(block: Float32Array, row: number) {
  const here = block[row];
  let [above, below, floorLuma, darkAbove] = [here, here, here, Infinity];
  for (let k = 1; k <= REACH_ROWS; k++) {
    // Beyond the band and where nothing is known no comparison holds.
    const [up, down] = [block[row - k], block[row + k]];
    if (up > above) above = up;
    if (down > below) below = down;
    if (up < floorLuma) floorLuma = up;
    if (down < floorLuma) floorLuma = down;
    if (k >= LIP_ROWS && up < darkAbove) darkAbove = up;
  }
  const behindLipLuma = Math.max(here, darkAbove);
  return { ribLuma: Math.min(above, below), floorLuma, behindLipLuma };
}
