import { describe, expect, it } from 'vitest';

import { findLaserLine } from '../../../src/measure/laser/laserLine.ts';
import { drawLaserScene } from '../../tools/drawnLaserLine.ts';

/** A plain bright line, searched in a window as narrow as a small picture's 11 mm up, 5 mm down. */
describe('findLaserLine in a narrow window', () => {
  const picture = drawLaserScene({
    ...{ widthPx: 640, heightPx: 360, noise: 2 },
    lines: [{ rowPx: () => 180, widthPx: 1.3, peak: 150 }],
  });
  const seenIn = (abovePx: number, belowPx: number): number =>
    findLaserLine(picture, 'green', {
      region: { x0: 0, x1: 640, y0: 180 - abovePx, y1: 181 + belowPx },
      window: {
        loPx: new Int16Array(640).fill(180 - abovePx),
        hiPx: new Int16Array(640).fill(180 + belowPx),
      },
      columnStepPx: 2,
    }).presentCount;

  it('finds it in 28 rows', () => {
    expect(seenIn(18, 9)).toBe(320);
  });

  // Of so few cells the line itself is in most differences: the noise must be told from around them.
  it.each([
    [14, 6],
    [12, 5],
    [9, 4],
  ])('finds it in %d rows above and %d below', (abovePx, belowPx) => {
    expect(seenIn(abovePx, belowPx)).toBe(320);
  });
});
