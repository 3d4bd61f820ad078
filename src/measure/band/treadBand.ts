import type { YuvPicture } from '../../contract/picture.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { projectPoint, type Camera } from '../geometry/camera.ts';

/**
 * The tread's visible part unrolled: one picture resampled onto the nominal cylinder, columns by
 * azimuth and rows by height above the laser plane. After this step a turn of the wheel is a shift
 * along the columns and a lean is a shift along the rows.
 */
export const AZIMUTH_STEP_DEG = 0.2;
export const Z_STEP_MM = 0.5;
/** Reach above and below the laser line: shoulder and two or three ribs of a car tyre. */
export const Z_TOP_MM = 40;
export const Z_BOTTOM_MM = -60;
export const BAND_ROWS = Math.round((Z_TOP_MM - Z_BOTTOM_MM) / Z_STEP_MM) + 1;
/** Beyond this the tread is seen too flat to tell heights. */
const MAX_AZIMUTH_DEG = 52;
/** Keep off the outline, where the line of sight grazes the tread. */
const OUTLINE_MARGIN_DEG = 11;
/** Chroma has half the picture's resolution and is only asked whether the laser shines: coarser cells do. */
export const CHROMA_COLUMN_STEP = 2;
export const CHROMA_ROW_STEP = 2;

export interface TreadBand {
  readonly camera: Camera;
  readonly radiusMm: number;
  /** Bearing (from the camera's own direction) of azimuth 0. */
  readonly sightBearingDeg: number;
  readonly columns: number;
  readonly rows: number;
  /** Azimuth of each column, degrees, falling from left to right as in the picture. */
  readonly azimuthDeg: Float64Array;
  /** Luma, rows × columns; rows from the top (Z_TOP_MM) down; 0 where not in the picture. */
  readonly luma: Uint8Array;
  /** 1 where a cell can be used: in the picture and not lit by the laser. */
  readonly usable: Uint8Array;
  /** Cells in the picture at all (fixed by the camera). */
  readonly inPicture: Uint8Array;
  readonly chromaColumns: number;
  readonly chromaRows: number;
  /** Colour differences minus 128, coarse cells: chromaRows × chromaColumns. */
  readonly u: Int8Array;
  readonly v: Int8Array;
  readonly tables: BandTables;
}

interface BandTables {
  /**
   * Way to each cell's top-left pixel from that of the cell before it in its row, 16 bits up, and above
   * the weights of its lower and its right pixels in 1/256, 8 bits each: one number a cell, since what
   * is read here for every picture is more than a processor keeps near by.
   */
  readonly steps: Int32Array;
  /** Pixel from which each row's ways are counted. */
  readonly rowPixel: Int32Array;
  /** 1 where all of a row is in the picture. */
  readonly rowIsWhole: Uint8Array;
  readonly chromaX: Int16Array;
  readonly chromaY: Int16Array;
  readonly yStride: number;
}

export function zOfRowMm(row: number): number {
  return Z_TOP_MM - row * Z_STEP_MM;
}

export function rowOfZ(zMm: number): number {
  return (Z_TOP_MM - zMm) / Z_STEP_MM;
}

/** Azimuth up to which heights can be told on either side. */
function seenReachDeg(camera: Camera, radiusMm: number, sightBearingDeg: number): number {
  const outlineDeg = Math.acos(Math.min(1, radiusMm / camera.pose.distanceMm)) / RAD_PER_DEG;
  return Math.min(MAX_AZIMUTH_DEG, outlineDeg - OUTLINE_MARGIN_DEG - Math.abs(sightBearingDeg));
}

/** Another band's own reach must come to as many steps as it has. */
const ROUNDING = 1e-9;

/** @param reachDeg azimuth of its outermost columns; as far as heights can be told when left out */
export function createTreadBand(
  camera: Camera,
  radiusMm: number,
  sightBearingDeg: number,
  yStride: number,
  reachDeg = seenReachDeg(camera, radiusMm, sightBearingDeg),
): TreadBand {
  const half = Math.max(1, Math.floor(reachDeg / AZIMUTH_STEP_DEG + ROUNDING));
  const columns = 2 * half + 1;
  const azimuthDeg = new Float64Array(columns);
  for (let c = 0; c < columns; c++) azimuthDeg[c] = (half - c) * AZIMUTH_STEP_DEG;
  const cells = columns * BAND_ROWS;
  const chromaColumns = Math.ceil(columns / CHROMA_COLUMN_STEP);
  const chromaRows = Math.ceil(BAND_ROWS / CHROMA_ROW_STEP);
  const band: TreadBand = {
    camera,
    radiusMm,
    sightBearingDeg,
    columns,
    rows: BAND_ROWS,
    azimuthDeg,
    luma: new Uint8Array(cells),
    usable: new Uint8Array(cells),
    inPicture: new Uint8Array(cells),
    chromaColumns,
    chromaRows,
    u: new Int8Array(chromaColumns * chromaRows),
    v: new Int8Array(chromaColumns * chromaRows),
    tables: {
      steps: new Int32Array(cells),
      rowPixel: new Int32Array(BAND_ROWS),
      rowIsWhole: new Uint8Array(BAND_ROWS),
      chromaX: new Int16Array(chromaColumns * chromaRows),
      chromaY: new Int16Array(chromaColumns * chromaRows),
      yStride,
    },
  };
  fillTables(band);
  return band;
}

/** What fits in the upper half of a number: some 25 rows of a picture 1280 wide, 8 of one of 4K. */
const LONGEST_STEP = 32767;

function fillTables(band: TreadBand): void {
  const { camera, radiusMm, sightBearingDeg, columns, azimuthDeg, inPicture, tables } = band;
  const { widthPx, heightPx } = camera.pose;
  const at = new Float64Array(2);
  /** Pixel of the last cell in each row that is in the picture; −1 before the first. */
  const lastPixel = new Int32Array(BAND_ROWS).fill(-1);
  for (let c = 0; c < columns; c++) {
    const bearing = (azimuthDeg[c] + sightBearingDeg) * RAD_PER_DEG;
    const x = radiusMm * Math.cos(bearing);
    const y = radiusMm * Math.sin(bearing);
    for (let r = 0; r < BAND_ROWS; r++) {
      const cell = r * columns + c;
      if (!projectPoint(camera, x, y, zOfRowMm(r), at)) continue;
      const px = at[0] - 0.5;
      const py = at[1] - 0.5;
      const x0 = Math.floor(px);
      const y0 = Math.floor(py);
      if (x0 < 0 || y0 < 0 || x0 > widthPx - 2 || y0 > heightPx - 2) continue;
      const pixel = y0 * tables.yStride + x0;
      if (lastPixel[r] < 0) {
        tables.rowPixel[r] = pixel;
        lastPixel[r] = pixel;
      }
      const step = pixel - lastPixel[r];
      // A row that leaves the picture and comes back far off: what comes then does without.
      if (Math.abs(step) > LONGEST_STEP) continue;
      lastPixel[r] = pixel;
      inPicture[cell] = 1;
      const xWeight = Math.min(255, Math.round((px - x0) * 256));
      const yWeight = Math.min(255, Math.round((py - y0) * 256));
      tables.steps[cell] = (step << 16) | (yWeight << 8) | xWeight;
      if (c % CHROMA_COLUMN_STEP === 0 && r % CHROMA_ROW_STEP === 0) {
        const chromaCell = (r / CHROMA_ROW_STEP) * band.chromaColumns + c / CHROMA_COLUMN_STEP;
        tables.chromaX[chromaCell] = Math.round(px);
        tables.chromaY[chromaCell] = Math.round(py);
      }
    }
  }
  for (let r = 0; r < BAND_ROWS; r++) {
    const row = inPicture.subarray(r * columns, (r + 1) * columns);
    tables.rowIsWhole[r] = row.includes(0) ? 0 : 1;
  }
}

/** Fills the band's luma and chroma from a picture of the size and stride it was made for. */
export function unrollPicture(band: TreadBand, picture: YuvPicture): void {
  if (picture.yStride !== band.tables.yStride || picture.widthPx !== band.camera.pose.widthPx) {
    throw new Error('unrollPicture: the band was made for pictures of another size or stride');
  }
  unrollLuma(band, picture);
  unrollChroma(band, picture);
}

/**
 * Mixes each cell's four pixels in 1/256, two of them read at once and nothing rounded before the end. A
 * cell that is not in the picture is left alone; a row that has no such cell is gone through unasked.
 */
function unrollLuma(band: TreadBand, picture: YuvPicture): void {
  const { luma, inPicture, columns } = band;
  const { steps, rowPixel, rowIsWhole, yStride } = band.tables;
  const y = new DataView(picture.y.buffer, picture.y.byteOffset, picture.y.byteLength);
  for (let r = 0; r < BAND_ROWS; r++) {
    const isWhole = rowIsWhole[r] === 1;
    const end = (r + 1) * columns;
    let p = rowPixel[r];
    for (let i = r * columns; i < end; i++) {
      if (!isWhole && inPicture[i] === 0) continue;
      const step = steps[i];
      p += step >> 16;
      const lower = (step >> 8) & 255;
      const top = y.getUint16(p, true);
      const bottom = y.getUint16(p + yStride, true);
      const topLeft = top & 255;
      const topRight = top >> 8;
      const left = (topLeft << 8) + Math.imul((bottom & 255) - topLeft, lower);
      const right = (topRight << 8) + Math.imul((bottom >> 8) - topRight, lower);
      luma[i] = ((left << 8) + Math.imul(right - left, step & 255) + 32768) >> 16;
    }
  }
}

function unrollChroma(band: TreadBand, picture: YuvPicture): void {
  const { u, v } = band;
  const { chromaX, chromaY } = band.tables;
  const { chromaStride, chromaStep, chromaShift } = picture;
  for (let i = 0; i < u.length; i++) {
    const p = (chromaY[i] >> chromaShift) * chromaStride + (chromaX[i] >> chromaShift) * chromaStep;
    u[i] = picture.u[p] - 128;
    v[i] = picture.v[p] - 128;
  }
}
