import type { YuvPicture } from '../../../src/contract/picture.ts';
import { benchFilm, nameOfSize, SIZE_1080P, SIZE_720P, type PictureSize } from './benchFilm.ts';
import type { BundledCore } from './bundledCore.ts';
import { quantile, runCore } from './coreRun.ts';

const SIZES: readonly PictureSize[] = [
  { widthPx: 640, heightPx: 360 },
  SIZE_720P,
  SIZE_1080P,
  { widthPx: 2560, heightPx: 1440 },
];
/** Pictures in which line and edge are found, and half a turn more. */
const PICTURES = 400;
/** Windows along the line, rows of a picture of 720. */
const WINDOW_ROWS = [15, 30, 60, 120];
const BEST_OF = 40;
/** Four times the pixels may cost a picture this much more: its line is searched at more places. */
const MOST_FOR_FOUR_TIMES = 2;

/**
 * Cost against the band and against the picture: once the view stands, a picture is measured in the
 * band alone. Prints both; whether four times the pixels cost less than twice the time.
 */
export async function bandCost(core: BundledCore): Promise<boolean> {
  console.log('\nsteady picture by picture size, ms of one core (lower quartile):');
  const steadyMs: number[] = [];
  for (const size of SIZES) {
    const { cpuMs } = await runCore(core, size, { first: PICTURES });
    // The lower quartile: neither the finding of the camera nor other programs reach down there.
    const ms = quantile(cpuMs.slice(PICTURES / 2), 0.25);
    steadyMs.push(ms);
    const megapixels = (size.widthPx * size.heightPx) / 1e6;
    console.log(`  ${nameOfSize(size).padEnd(10)} ${megapixels.toFixed(2)} Mpx  ${ms.toFixed(2)}`);
  }
  console.log('line by height of its window, 1280×720, every 4th column, ms (best):');
  const picture = await firstPicture(SIZE_720P);
  for (const rows of WINDOW_ROWS) {
    const ms = bestMs(() => core.findLaserLine(picture, 'green', windowOf(picture, rows)));
    console.log(`  ${String(rows).padStart(4)} rows  ${ms.toFixed(2)}`);
  }
  console.log(
    'band by its width at one height of 100 mm, 1280×720, unroll and block profiles, ms (best):',
  );
  for (const { cells, columns, ms } of bandTimes(core, picture)) {
    const perCell = (1e6 * ms) / cells;
    console.log(`  ${columns} columns  ${ms.toFixed(2)}  (${perCell.toFixed(1)} ns a cell)`);
  }
  const growth = steadyMs[3]! / steadyMs[1]!;
  const kept = growth <= MOST_FOR_FOUR_TIMES;
  console.log(
    `four times the pixels of 1280×720 cost ${growth.toFixed(2)} times as much ` +
      `(at most ${MOST_FOR_FOUR_TIMES}): ${kept ? 'kept' : 'NOT KEPT'}`,
  );
  return kept;
}

/** Bands ever narrower, as a sight farther aside leaves them. */
function bandTimes(core: BundledCore, picture: YuvPicture) {
  const { widthPx, heightPx, yStride } = picture;
  const camera = core.cameraFromPose({
    ...{ widthPx, heightPx, focalPx: 0.8 * widthPx, radial: 0, downTiltDeg: 32 },
    ...{ yawDeg: 0, rollDeg: 0, distanceMm: 720, heightMm: 270 },
  });
  return [0, 12, 24].map((asideDeg) => {
    const band = core.createTreadBand(camera, 305, asideDeg, yStride);
    const layout = core.layoutBlocks(band);
    const profiles = new Float32Array(layout.azimuthsDeg.length * band.rows);
    const ms = bestMs(() => {
      core.unrollPicture(band, picture);
      core.blockProfiles(band, layout, profiles);
    });
    return { columns: band.columns, cells: band.columns * band.rows, ms };
  });
}

function windowOf({ widthPx, heightPx }: YuvPicture, rows: number) {
  const middle = heightPx / 2;
  const loPx = new Float32Array(widthPx).fill(middle - rows / 2);
  const hiPx = new Float32Array(widthPx).fill(middle + rows / 2);
  return { window: { loPx, hiPx }, columnStepPx: 4 };
}

function bestMs(work: () => unknown): number {
  let best = Infinity;
  for (let n = 0; n < BEST_OF; n++) {
    const startMs = performance.now();
    work();
    best = Math.min(best, performance.now() - startMs);
  }
  return best;
}

async function firstPicture(size: PictureSize): Promise<YuvPicture> {
  for await (const picture of benchFilm(size).pictures()) {
    return { ...picture, y: picture.y.slice(), u: picture.u.slice(), v: picture.v.slice() };
  }
  throw new Error('the sample has no pictures');
}
