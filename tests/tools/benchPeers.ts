import { parseArgs } from 'node:util';

import type { YuvPicture } from '../../src/contract/picture.ts';
import { findLaserHue } from '../../src/measure/laser/laserHue.ts';
import { findLaserLine } from '../../src/measure/laser/laserLine.ts';
import { openCv, withMats, type CvMat, type OpenCv } from '../outside/openCv.ts';
import { filmPictures } from './filmPictures.ts';
import { readStageTruth, truthAt, type FrameTruth } from './stages/frameTruth.ts';
import { listSweeps } from './sweepFolder.ts';

/**
 * The line finder beside textbook methods written with plain OpenCV calls, on the same pictures in
 * the same run: `npm run bench:peers -- DIR [name ...]`. Time a picture, and error against the truth
 * where the line lands on the rib's face.
 *
 * All take the laser's own colour channel. None but ours knows what a line of light on a tread is:
 * the table says what that knowledge is worth, not that the methods are bad.
 */
const { positionals } = parseArgs({ allowPositionals: true });
const [folder = '../shared/sweeps', ...names] = positionals;
/** Every so many pictures of a film. */
const EVERY = 24;
/** Where the sheet lands this near to the rib's face, it lies on it, px. */
const ON_FACE_PX = 0.6;
/** A row this near is the line; farther away something else was taken for it, px. */
const FOUND_PX = 3;

/** Row of the line in every column, NaN where none is found. */
type Method = (cv: OpenCv, channel: Uint8Array, widthPx: number, heightPx: number) => Float32Array;

const PEERS: readonly (readonly [string, Method])[] = [
  ['column maximum, centroid', columnCentroid],
  ['Gaussian, second derivative', secondDerivative],
  ['Canny, Hough', cannyHough],
];

function columnCentroid(cv: OpenCv, channel: Uint8Array, w: number, h: number): Float32Array {
  return withMats((keep) => {
    const picture = keep(cv.matFromArray(h, w, cv.CV_8UC1, channel));
    const smooth = keep(new cv.Mat());
    cv.blur(picture, smooth, new cv.Size(1, 3));
    const data = smooth.data as Uint8Array;
    return Float32Array.from({ length: w }, (_, x) => {
      let best = 1;
      for (let y = 1; y < h - 1; y++) if (data[y * w + x] > data[best * w + x]) best = y;
      let [sum, rows] = [0, 0];
      for (let y = Math.max(0, best - 5); y <= Math.min(h - 1, best + 5); y++) {
        sum += data[y * w + x];
        rows += data[y * w + x] * (y + 0.5);
      }
      return rows / sum;
    });
  });
}

function secondDerivative(cv: OpenCv, channel: Uint8Array, w: number, h: number): Float32Array {
  return withMats((keep) => {
    const picture = keep(cv.matFromArray(h, w, cv.CV_8UC1, channel));
    const smooth = keep(new cv.Mat());
    const curve = keep(new cv.Mat());
    cv.GaussianBlur(picture, smooth, new cv.Size(0, 0), 2);
    cv.Sobel(smooth, curve, cv.CV_32F, 0, 2, 3);
    const data = (curve as CvMat).data32F as Float32Array;
    return Float32Array.from({ length: w }, (_, x) => {
      let best = 1;
      for (let y = 1; y < h - 1; y++) if (data[y * w + x] < data[best * w + x]) best = y;
      const [a, b, c] = [-1, 0, 1].map((k) => data[(best + k) * w + x] ?? 0);
      return best + 0.5 + (a - c) / (2 * (a - 2 * b + c) || 1);
    });
  });
}

function cannyHough(cv: OpenCv, channel: Uint8Array, w: number, h: number): Float32Array {
  return withMats((keep) => {
    const picture = keep(cv.matFromArray(h, w, cv.CV_8UC1, channel));
    const edges = keep(new cv.Mat());
    const found = keep(new cv.Mat());
    cv.Canny(picture, edges, 60, 180);
    cv.HoughLinesP(edges, found, 1, Math.PI / 180, 40, 30, 8);
    const data = found.data32S as Int32Array;
    const rows: number[][] = Array.from({ length: w }, () => []);
    for (let i = 0; i + 3 < data.length; i += 4) {
      const [x0, y0, x1, y1] = data.subarray(i, i + 4);
      if (Math.abs(y1 - y0) > Math.abs(x1 - x0)) continue;
      for (let x = Math.min(x0, x1); x <= Math.max(x0, x1); x++) {
        rows[x].push(y0 + 0.5 + ((x - x0) * (y1 - y0)) / (x1 - x0 || 1));
      }
    }
    // The two borders of the line: the middle of all that lie over a column.
    return Float32Array.from(rows, (r) => r.sort((a, b) => a - b)[r.length >> 1] ?? NaN);
  });
}

/** The laser's own channel, full range (BT.601). */
function channelOf(picture: YuvPicture, colour: 'green' | 'red'): Uint8Array {
  const { widthPx: w, heightPx: h } = picture;
  const out = new Uint8ClampedArray(w * h);
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const c =
        (y >> picture.chromaShift) * picture.chromaStride +
        (x >> picture.chromaShift) * picture.chromaStep;
      const u = picture.u[c] - 128;
      const v = picture.v[c] - 128;
      const luma = picture.y[y * picture.yStride + x];
      out[y * w + x] = colour === 'green' ? luma - 0.344 * u - 0.714 * v : luma + 1.402 * v;
    }
  }
  return new Uint8Array(out.buffer);
}

interface Score {
  readonly ms: number[];
  readonly squares: number[];
  asked: number;
}

function judge(score: Score, rowPx: Float32Array, truth: FrameTruth): void {
  truth.lineOnFacePx.forEach(([x, y], q) => {
    const landed = truth.linePx[q];
    if (!truth.lineSeen[q] || Math.abs(landed[1] - y) > ON_FACE_PX) return;
    const column = Math.floor(x);
    if (column < 0 || column >= rowPx.length) return;
    score.asked++;
    const miss = rowPx[column] - y;
    if (Math.abs(miss) < FOUND_PX) score.squares.push(miss * miss);
  });
}

const cv = await openCv();
for (const entry of listSweeps(folder, names)) {
  const truth = entry.truth && readStageTruth(entry.setupPath.replace('.setup.', '.truth.'));
  if (!truth) continue;
  const scores = new Map<string, Score>();
  const timed = (name: string, frame: FrameTruth, run: () => Float32Array): void => {
    const score = scores.get(name) ?? { ms: [], squares: [], asked: 0 };
    scores.set(name, score);
    const startMs = performance.now();
    const rows = run();
    score.ms.push(performance.now() - startMs);
    judge(score, rows, frame);
  };
  let index = 0;
  for await (const picture of filmPictures(entry.filmPath)) {
    const frame = index++ % EVERY === 0 ? truthAt(truth, picture.timeS) : null;
    const hue = frame && findLaserHue(picture);
    if (!frame || !hue?.ok) continue;
    const { widthPx, heightPx } = picture;
    timed('ours, whole picture', frame, () => findLaserLine(picture, hue.value.colour).rowPx);
    const channel = channelOf(picture, hue.value.colour);
    for (const [name, method] of PEERS)
      timed(name, frame, () => method(cv, channel, widthPx, heightPx));
  }
  console.log(`${entry.name}: line on the rib's face, every ${EVERY}th picture`);
  for (const [name, { ms, squares, asked }] of scores) {
    const middleMs = [...ms].sort((a, b) => a - b)[ms.length >> 1];
    const rms = Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length);
    console.log(
      `  ${name.padEnd(28)} ${middleMs.toFixed(1).padStart(6)} ms   found within ${FOUND_PX} px ` +
        `${((100 * squares.length) / asked).toFixed(0).padStart(3)} %   rms of those ${rms.toFixed(2)} px`,
    );
  }
}
