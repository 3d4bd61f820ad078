/**
 * Tries the line finder on photographs and films that are not part of the project and prints
 * figures: `npx tsx tests/tools/tryLine.ts [DIR] [--overlay DIR]`, DIR holding the photographs,
 * `DIR/../sweeps` the rendered films with truth. Truth is read here for scoring only.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';

import type { YuvPicture } from '../../src/contract/picture.ts';
import { findLaserHue } from '../../src/measure/laser/laserHue.ts';
import { findLaserLine, type LaserLine } from '../../src/measure/laser/laserLine.ts';
import { decodePictures, writeOverlay, type DecodeChoice } from './ffmpegPictures.ts';

const args = process.argv.slice(2);
const overlayAt = args.indexOf('--overlay');
const overlayDir = overlayAt >= 0 ? args.splice(overlayAt, 2)[1] : null;
const photoDir = args[0] ?? '../shared/real';
const sweepDir = join(photoDir, '..', 'sweeps');
if (overlayDir !== null) mkdirSync(overlayDir, { recursive: true });

/** Farther from the truth than this the finder was on something else, px. */
const FAR_PX = 3;

const STILL: DecodeChoice = { format: 'yuvj444p' };
const PHOTOS: readonly (readonly [string, DecodeChoice])[] = [
  ['A_straight_10.jpg', { ...STILL, transposed: true }],
  ['A_straight_40.jpg', { ...STILL, transposed: true }],
  ['A_stairs_25.jpg', { ...STILL, transposed: true }],
  ['A_step_3.68mm.mp4', { format: 'yuv420p', transposed: true, frames: [8] }],
  ['A_step_14mm.mp4', { format: 'yuv420p', transposed: true, frames: [8] }],
  ['bust_on.png', { ...STILL, transposed: true }],
  ['bust_off.png', { ...STILL, transposed: true }],
  ['ring_red.png', { ...STILL, transposed: true }],
  ['weld_flare.png', { format: 'gray' }],
  ['phone12mp.jpg', { ...STILL, transposed: true }],
];

const only = process.env['ONLY'];
if (!existsSync(photoDir) || only === 'sweeps')
  console.log(`${photoDir} is not there: no photographs tried`);
else for (const [name, choice] of PHOTOS) tryPhoto(name, choice);
if (!existsSync(sweepDir)) console.log(`${sweepDir} is not there: no films tried`);
else for (const file of readdirSync(sweepDir)) if (file.endsWith('.mp4')) trySweep(file);

function tryPhoto(name: string, choice: DecodeChoice): void {
  const file = join(photoDir, name);
  if (!existsSync(file)) return console.log(`${name}: not there`);
  const [picture] = decodePictures(file, choice);
  const hue = findLaserHue(picture);
  const colour = hue.ok ? hue.value.colour : 'red';
  const line = findLaserLine(picture, colour);
  const about = hue.ok
    ? `${colour} strength ${hue.value.strength.toFixed(1)} columns ${percent(hue.value.columnShare)} rival ${hue.value.rivalShare.toFixed(2)}`
    : `no hue ${JSON.stringify(hue.failure.evidence)}`;
  console.log(`${name}: ${about}; noise ${line.noise.toFixed(2)}, ${timing(picture, colour)}`);
  for (const piece of piecesOf(line)) console.log(`   ${piece}`);
  if (name === 'bust_on.png') scoreAgainstBust(line);
  drawOverlay(`${name}.png`, picture, line, []);
}

/** Straight pieces of the line with the rms of their rows about a straight fit. */
function piecesOf(line: LaserLine): string[] {
  const found: string[] = [];
  let from = -1;
  for (let n = 0; n <= line.rowPx.length; n++) {
    const here = n < line.rowPx.length ? line.rowPx[n] : Number.NaN;
    const ends = from >= 0 && !(Math.abs(here - line.rowPx[n - 1]) < 4);
    if (ends && n - from >= 12) found.push(describePiece(line, from, n));
    if (ends) from = -1;
    if (from < 0 && !Number.isNaN(here)) from = n;
  }
  return found.length > 14 ? [`${found.length} pieces`] : found;
}

function describePiece(line: LaserLine, from: number, to: number): string {
  const rows = line.rowPx.subarray(from, to);
  const n = rows.length;
  const meanX = (n - 1) / 2;
  const meanY = rows.reduce((sum, row) => sum + row, 0) / n;
  let sxy = 0;
  let sxx = 0;
  rows.forEach((row, i) => {
    sxy += (i - meanX) * (row - meanY);
    sxx += (i - meanX) ** 2;
  });
  let squares = 0;
  rows.forEach((row, i) => (squares += (row - meanY - (sxy / sxx) * (i - meanX)) ** 2));
  const middle = (from + to) >> 1;
  return (
    `columns ${line.columnsPx[from]}–${line.columnsPx[to - 1]} row ${meanY.toFixed(2)} ` +
    `slope ${(sxy / sxx).toFixed(3)} rms ${Math.sqrt(squares / n).toFixed(3)} ` +
    `spread ${line.spreadPx[middle].toFixed(1)} strength ${line.strength[middle].toFixed(1)}`
  );
}

/** Reference by picture row: "row,x,peak" from the on/off pair, in pixels with centres at whole numbers. */
function scoreAgainstBust(line: LaserLine): void {
  const file = join(photoDir, 'bust_silver.csv');
  if (!existsSync(file)) return;
  let near = 0;
  let missed = 0;
  let far = 0;
  let squares = 0;
  const text = readFileSync(file, 'utf8').trim().split('\n').slice(1);
  for (const [row, x] of text.map((t) => t.split(',').map(Number))) {
    const found = line.rowPx[row];
    if (Number.isNaN(found)) missed++;
    else if (Math.abs(found - x - 0.5) > 3) far++;
    else {
      near++;
      squares += (found - x - 0.5) ** 2;
    }
  }
  const rms = Math.sqrt(squares / near).toFixed(2);
  console.log(`   reference: ${near} near (rms ${rms} px), ${far} far, ${missed} missed`);
}

interface TruthFrame {
  readonly laserOn: number;
  readonly linePx: readonly (readonly [number, number])[];
  readonly lineOnFacePx: readonly (readonly [number, number])[];
  readonly lineSeen: readonly number[];
}

function trySweep(file: string): void {
  const name = basename(file, '.mp4');
  const truth = JSON.parse(readFileSync(join(sweepDir, `${name}.truth.json`), 'utf8')) as {
    frames: TruthFrame[];
  };
  const frames = [0.05, 0.2, 0.35, 0.5, 0.65, 0.8, 0.95].map((f) =>
    Math.round(f * (truth.frames.length - 1)),
  );
  const pictures = decodePictures(join(sweepDir, file), { format: 'yuv420p', frames });
  const tally = { seen: 0, hit: 0, far: 0, missed: 0, hidden: 0, falsely: 0, squares: 0, sum: 0 };
  let hueFound = '';
  pictures.forEach((picture, n) => {
    const hue = findLaserHue(picture);
    if (!hue.ok) {
      console.log(`${name} frame ${frames[n]}: no hue`, hue.failure.evidence);
      return;
    }
    hueFound += ` ${hue.value.colour[0]}${hue.value.rivalShare.toFixed(2)}`;
    const line = findLaserLine(picture, hue.value.colour);
    score(line, truth.frames[frames[n]], tally);
    const dots = truth.frames[frames[n]].linePx.flatMap(([x, y], i) => {
      const rgb = truth.frames[frames[n]].lineSeen[i] ? [0, 255, 255] : [0, 0, 255];
      return [-4, -3, 3, 4].map((d) => ({ x, y: y + d, rgb: rgb as [number, number, number] }));
    });
    drawOverlay(`${name}-${frames[n]}.png`, picture, line, dots);
  });
  const t = tally;
  console.log(
    `${name}: rms ${Math.sqrt(t.squares / t.hit).toFixed(3)} px (mean ${(t.sum / t.hit).toFixed(3)}) ` +
      `of ${t.hit} hits; far ${percent(t.far / t.seen)} missed ${percent(t.missed / t.seen)} of ${t.seen} seen; ` +
      `present at ${t.falsely} of ${t.hidden} hidden; hue${hueFound}; ` +
      timing(pictures[0], name === 'red-line' ? 'red' : 'green'),
  );
}

function score(
  line: LaserLine,
  truth: TruthFrame,
  tally: {
    seen: number;
    hit: number;
    far: number;
    missed: number;
    hidden: number;
    falsely: number;
    squares: number;
    sum: number;
  },
): void {
  truth.linePx.forEach(([x, y], i) => {
    const found = rowAt(line, x);
    if (!truth.lineSeen[i]) {
      tally.hidden++;
      if (!Number.isNaN(found)) tally.falsely++;
      return;
    }
    tally.seen++;
    if (Number.isNaN(found)) tally.missed++;
    else if (Math.abs(found - y) > FAR_PX) tally.far++;
    else {
      tally.hit++;
      tally.squares += (found - y) ** 2;
      tally.sum += found - y;
    }
  });
}

/** Row at a sub-pixel column: between two columns where both are there, else the nearer one's. */
function rowAt(line: LaserLine, x: number): number {
  const n = Math.floor(x - line.columnsPx[0]);
  const share = x - line.columnsPx[0] - n;
  const [a, b] = [line.rowPx[n], line.rowPx[n + 1]];
  if (Math.abs(a - b) < FAR_PX) return a + share * (b - a);
  return share < 0.5 ? a : b;
}

function timing(picture: YuvPicture, colour: 'green' | 'red'): string {
  const runs = 12;
  for (let i = 0; i < 4; i++) findLaserLine(picture, colour);
  const start = performance.now();
  for (let i = 0; i < runs; i++) findLaserLine(picture, colour);
  return `${((performance.now() - start) / runs).toFixed(1)} ms`;
}

function drawOverlay(
  name: string,
  picture: YuvPicture,
  line: LaserLine,
  more: readonly { x: number; y: number; rgb: readonly [number, number, number] }[],
): void {
  if (overlayDir === null) return;
  const dots = Array.from(line.rowPx, (y, n) => ({
    ...{ x: line.columnsPx[n], y },
    rgb: [255, 0, 255] as const,
  })).filter((dot) => !Number.isNaN(dot.y));
  writeOverlay(join(overlayDir, name), picture, [...dots, ...more]);
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
