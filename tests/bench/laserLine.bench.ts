import { bench, describe } from 'vitest';

import { findLaserHue } from '../../src/measure/laser/laserHue.ts';
import { findLaserLine } from '../../src/measure/laser/laserLine.ts';
import { drawLaserScene } from '../tools/drawnLaserLine.ts';

const widthPx = 1280;
const rowPx = (x: number): number => 380 - ((x - 640) / 80) ** 2;
const picture = drawLaserScene({
  ...{ widthPx, heightPx: 720, noise: 2 },
  lines: [{ rowPx, widthPx: 2, peak: 150 }],
});
const at = (off: number): Float32Array =>
  Float32Array.from({ length: widthPx }, (_, x) => rowPx(x + 0.5) + off);
const window = { loPx: at(-30), hiPx: at(30) };

describe('laser line in 1280 × 720', () => {
  bench('whole picture, every column', () => void findLaserLine(picture, 'green'));
  bench('whole picture, every 2nd column', () => {
    findLaserLine(picture, 'green', { columnStepPx: 2 });
  });
  bench('window of 60 rows, every column', () => void findLaserLine(picture, 'green', { window }));
  bench('window of 60 rows, every 2nd column', () => {
    findLaserLine(picture, 'green', { window, columnStepPx: 2 });
  });
  bench('hue in the whole picture', () => void findLaserHue(picture));
});
