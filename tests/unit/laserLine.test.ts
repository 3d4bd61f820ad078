import { describe, expect, it } from 'vitest';

import { findLaserLine, type LaserLine } from '../../src/measure/laser/laserLine.ts';
import { asNv12, drawLaserScene, type DrawnScene } from '../tools/drawnLaserLine.ts';

const SIZE = { widthPx: 480, heightPx: 200 };
const sloping = (x: number): number => 80.4 + 0.05 * x;

function errorsPx(line: LaserLine, rowPx: (x: number) => number, from = 0, to = 1e9): number[] {
  const errors: number[] = [];
  line.columnsPx.forEach((x, n) => {
    if (x >= from && x < to && !Number.isNaN(line.rowPx[n])) errors.push(line.rowPx[n] - rowPx(x));
  });
  return errors;
}

function rms(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
}

function worst(values: readonly number[]): number {
  return values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
}

function presentIn(line: LaserLine, from: number, to: number): number {
  return line.columnsPx.filter((x, n) => x >= from && x < to && !Number.isNaN(line.rowPx[n]))
    .length;
}

describe('findLaserLine', () => {
  it.each([
    ['4:2:0, full range', { chromaShift: 1, fullRange: true }],
    ['4:4:4, full range', { chromaShift: 0, fullRange: true }],
    ['4:2:0, video range', { chromaShift: 1, fullRange: false }],
  ] as const)('finds every column of a clean line in %s', (_name, coding) => {
    const lines = [{ rowPx: sloping, widthPx: 2, peak: 150 }];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, ...coding }), 'green');
    expect(line.presentCount).toBe(SIZE.widthPx);
    // Rounding to 8 bit alone allows 0.01 px at this height; ten times that is still no bias.
    expect(worst(errorsPx(line, sloping))).toBeLessThan(0.03);
    // 2 px and the (1 2 1)/4 smoothing under which it is measured: √(4 + 0.5).
    expect(line.spreadPx[200]).toBeCloseTo(Math.sqrt(4.5), 1);
    expect(line.lumaRise[200]).toBeGreaterThan(0.8 * 0.587 * 150);
    expect(line.lumaRise[200]).toBeLessThan(1.05 * 0.587 * 150);
  });

  it('moves with the line: a shift of the drawn line is the shift of the found one', () => {
    const found = [0, 0.25, 0.5, 0.75].map((shift) => {
      const lines = [{ rowPx: (x: number) => sloping(x) + shift, widthPx: 1.8, peak: 150 }];
      return findLaserLine(drawLaserScene({ ...SIZE, lines }), 'green').rowPx;
    });
    found.forEach((rows, n) => {
      const moved = Array.from(rows, (row, i) => row - found[0][i] - n * 0.25);
      expect(rms(moved)).toBeLessThan(0.02);
    });
  });

  it('takes I420 and NV12 for the same picture', () => {
    const scene: DrawnScene = {
      ...{ ...SIZE, noise: 3, seed: 5 },
      lines: [{ rowPx: sloping, widthPx: 2, peak: 120 }],
    };
    const picture = drawLaserScene(scene);
    expect(findLaserLine(asNv12(picture), 'green')).toEqual(findLaserLine(picture, 'green'));
  });

  it('finds the same rows in a window as in the whole picture', () => {
    const scene: DrawnScene = {
      ...{ ...SIZE, noise: 2, seed: 8 },
      lines: [{ rowPx: sloping, widthPx: 2, peak: 120 }],
    };
    const picture = drawLaserScene(scene);
    const full = findLaserLine(picture, 'green');
    const at = (off: number): Float32Array =>
      Float32Array.from({ length: SIZE.widthPx }, (_, x) => sloping(x + 0.5) + off);
    const windowed = findLaserLine(picture, 'green', { window: { loPx: at(-14), hiPx: at(16) } });
    expect(windowed.rowPx).toEqual(full.rowPx);
    expect(windowed.columnsPx).toEqual(full.columnsPx);
  });

  it('measures every fourth column as it measures all', () => {
    const lines = [{ rowPx: sloping, widthPx: 2, peak: 150 }];
    const picture = drawLaserScene({ ...SIZE, lines });
    const some = findLaserLine(picture, 'green', { columnStepPx: 4 });
    expect(some.columnsPx.length).toBe(SIZE.widthPx / 4);
    expect(some.columnsPx[3]).toBe(12.5);
    expect(some.presentCount).toBe(SIZE.widthPx / 4);
    expect(worst(errorsPx(some, sloping))).toBeLessThan(0.03);
  });

  it('searches a region only and keeps picture coordinates', () => {
    const lines = [{ rowPx: sloping, widthPx: 2, peak: 150 }];
    const picture = drawLaserScene({ ...SIZE, lines });
    const inside = findLaserLine(picture, 'green', {
      region: { x0: 100, y0: 70, x1: 220, y1: 120 },
    });
    expect(inside.columnsPx[0]).toBe(100.5);
    expect(inside.columnsPx.length).toBe(120);
    expect(worst(errorsPx(inside, sloping))).toBeLessThan(0.03);
    const above = findLaserLine(picture, 'green', { region: { x0: 0, y0: 0, x1: 480, y1: 60 } });
    expect(above.presentCount).toBe(0);
  });

  it('follows slopes of 0.9 either way', () => {
    const bent = (x: number): number => 160 - 0.9 * Math.min(x, 320 - x);
    const lines = [{ rowPx: bent, widthPx: 1.8, peak: 150 }];
    const picture = drawLaserScene({ ...SIZE, widthPx: 320, lines, noise: 2 });
    const line = findLaserLine(picture, 'green');
    expect(line.presentCount).toBeGreaterThan(315);
    expect(rms(errorsPx(line, bent, 4, 156))).toBeLessThan(0.12);
    expect(rms(errorsPx(line, bent, 164, 316))).toBeLessThan(0.12);
  });

  it('finds a weak line in daylight, 7 luma steps above a bright ambient', () => {
    const lines = [{ rowPx: sloping, widthPx: 2, peak: 12 }];
    const scene: DrawnScene = { ...SIZE, lines, noise: 1, ambient: () => [150, 150, 150] };
    const line = findLaserLine(drawLaserScene(scene), 'green');
    expect(line.presentCount).toBeGreaterThan(0.9 * SIZE.widthPx);
    // The bound at SNR 7 is 0.21 px; false columns would be whole pixels off.
    expect(rms(errorsPx(line, sloping))).toBeLessThan(0.4);
  });

  it('finds a dim line whose colour is but four times as strong as the noise of a cell', () => {
    for (const seed of [1, 2, 3]) {
      const lines = [{ rowPx: sloping, widthPx: 1.5, peak: 50 }];
      const scene: DrawnScene = { ...SIZE, lines, noise: 6, seed, ambient: () => [20, 20, 20] };
      const line = findLaserLine(drawLaserScene(scene), 'green');
      expect(line.presentCount).toBeGreaterThan(0.9 * SIZE.widthPx);
      // The bound at SNR 5 is 0.24 px; false columns would be whole pixels off.
      expect(rms(errorsPx(line, sloping))).toBeLessThan(0.5);
    }
  });

  it('says absent everywhere when there is no line', () => {
    for (const seed of [1, 2, 3]) {
      const ambient = (_x: number, y: number): [number, number, number] =>
        y < 60 ? [90, 140, 90] : y < 130 ? [60, 60, 60] : [120, 90, 140];
      const line = findLaserLine(
        drawLaserScene({ ...SIZE, lines: [], noise: 4, seed, ambient }),
        'green',
      );
      expect(line.presentCount).toBe(0);
      expect(line.rowPx.every((row) => Number.isNaN(row))).toBe(true);
      expect(findLaserLine(drawLaserScene({ ...SIZE, lines: [], seed }), 'red').presentCount).toBe(
        0,
      );
    }
  });

  it('throws on a window that does not fit and on a bad step', () => {
    const picture = drawLaserScene({ ...SIZE, lines: [] });
    const short = { loPx: new Float32Array(10), hiPx: new Float32Array(10) };
    expect(() => findLaserLine(picture, 'green', { window: short })).toThrow(/480 columns/);
    expect(() => findLaserLine(picture, 'green', { columnStepPx: 0 })).toThrow(/columnStepPx/);
  });
});

describe('a saturated line', () => {
  it.each(['green', 'red'] as const)('keeps its centre when the %s core is white', (colour) => {
    const lines = [{ rowPx: sloping, widthPx: 4, peak: 2500, crosstalk: 0.25, colour }];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, noise: 2 }), colour);
    expect(line.presentCount).toBe(SIZE.widthPx);
    expect(rms(errorsPx(line, sloping))).toBeLessThan(0.15);
  });

  it('changes from 5 to 36 px wide without losing a column or the centre', () => {
    const wide = (x: number): boolean => x >= 160 && x < 320;
    const rowPx = (x: number): number => (wide(x) ? 90.3 : 110.7);
    const lines = [
      { rowPx: (x: number) => (wide(x) ? Number.NaN : rowPx(x)), widthPx: 2, peak: 170 },
      {
        ...{ rowPx: (x: number) => (wide(x) ? rowPx(x) : Number.NaN) },
        ...{ widthPx: 8, peak: 2500, crosstalk: 0.25 },
      },
    ];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, noise: 2 }), 'green');
    expect(line.presentCount).toBeGreaterThan(SIZE.widthPx - 8);
    expect(rms(errorsPx(line, rowPx, 0, 158))).toBeLessThan(0.1);
    expect(rms(errorsPx(line, rowPx, 162, 318))).toBeLessThan(0.15);
    expect(rms(errorsPx(line, rowPx, 322, 480))).toBeLessThan(0.1);
    expect(line.spreadPx[240]).toBeGreaterThan(3 * line.spreadPx[60]);
  });

  it('is told from its fainter doubles on both sides', () => {
    const ghost = (off: number) => ({ rowPx: (x: number) => sloping(x) + off, widthPx: 2.5 });
    const lines = [
      { rowPx: sloping, widthPx: 3, peak: 1500, crosstalk: 0.3 },
      { ...ghost(-15), peak: 110 },
      { ...ghost(17), peak: 90 },
    ];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, noise: 2 }), 'green');
    expect(line.presentCount).toBe(SIZE.widthPx);
    expect(rms(errorsPx(line, sloping))).toBeLessThan(0.15);
  });
});

describe('breaks of the line', () => {
  it('does not bridge a gap between two pieces at different heights', () => {
    const rowPx = (x: number): number => (x < 200 ? 80.2 : x < 230 ? Number.NaN : 98.6);
    const lines = [{ rowPx, widthPx: 2, peak: 150 }];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, noise: 2 }), 'green');
    // A cell of 2 px on the border holds some of the line's colour.
    expect(presentIn(line, 202, 228)).toBe(0);
    expect(presentIn(line, 0, 200)).toBeGreaterThan(197);
    expect(presentIn(line, 230, 480)).toBeGreaterThan(247);
    expect(rms(errorsPx(line, rowPx, 4, 196))).toBeLessThan(0.1);
    expect(rms(errorsPx(line, rowPx, 234, 476))).toBeLessThan(0.1);
  });

  it('leaves narrow slots in a straight line empty', () => {
    const inSlot = (x: number): boolean => x % 60 >= 40 && x % 60 < 46;
    const rowPx = (x: number): number => (inSlot(x) ? Number.NaN : 90.5);
    const lines = [{ rowPx, widthPx: 2, peak: 150 }];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, noise: 1 }), 'green');
    const inside = line.columnsPx.filter((x, n) => inSlot(x) && !Number.isNaN(line.rowPx[n]));
    expect(inside.length).toBe(0);
    expect(presentIn(line, 0, 480)).toBeGreaterThan(480 - 48 - 8);
  });
});

describe('what is not the line', () => {
  it('is red print on white card beside a red line', () => {
    const rowPx = (x: number): number => 60 + 0.02 * x;
    const letters = (x: number, y: number): [number, number, number] => {
      const inStroke =
        (y > 110 && y < 114) || (y > 124 && y < 130) || (x % 24 < 4 && y > 110 && y < 140);
      return inStroke ? [190, 40, 50] : [150, 150, 145];
    };
    const lines = [{ rowPx, widthPx: 2, peak: 60, colour: 'red' as const, crosstalk: 0.2 }];
    const scene: DrawnScene = { ...SIZE, lines, noise: 2, ambient: letters };
    const line = findLaserLine(drawLaserScene(scene), 'red');
    expect(line.presentCount).toBe(SIZE.widthPx);
    expect(rms(errorsPx(line, rowPx))).toBeLessThan(0.2);
    // Without the line the print alone makes none either.
    expect(findLaserLine(drawLaserScene({ ...scene, lines: [] }), 'red').presentCount).toBe(0);
  });

  it.each([0.5, 1, 4, 8])(
    'is a broad white rim with no line anywhere, at a noise of %d',
    (noise) => {
      const ambient = (_x: number, y: number): [number, number, number] =>
        y > 90 && y < 120 ? [255, 255, 255] : [60, 60, 60];
      for (const seed of [1, 2, 3]) {
        const picture = drawLaserScene({ ...SIZE, lines: [], ambient, noise, seed });
        expect(findLaserLine(picture, 'green').presentCount).toBe(0);
      }
    },
  );

  it('is a white tape or a bright rim with no halo', () => {
    const ambient = (_x: number, y: number): [number, number, number] =>
      y > 50 && y < 56 ? [255, 255, 255] : y > 120 && y < 150 ? [250, 250, 245] : [60, 60, 60];
    const lines = [{ rowPx: sloping, widthPx: 2, peak: 100 }];
    const line = findLaserLine(drawLaserScene({ ...SIZE, lines, ambient, noise: 2 }), 'green');
    expect(line.presentCount).toBe(SIZE.widthPx);
    expect(rms(errorsPx(line, sloping))).toBeLessThan(0.15);
    expect(
      findLaserLine(drawLaserScene({ ...SIZE, lines: [], ambient, noise: 2 }), 'green')
        .presentCount,
    ).toBe(0);
  });
});
