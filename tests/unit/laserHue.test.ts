import { describe, expect, it } from 'vitest';

import { findLaserHue } from '../../src/measure/laser/laserHue.ts';
import { drawLaserScene } from '../tools/drawnLaserLine.ts';

const SIZE = { widthPx: 640, heightPx: 360 };
const rowPx = (x: number): number => 200 + 40 * Math.sin(x / 200);

/** Purple boxes, green crates, a red floor and a rusty post: wide, coloured, not thin. */
function scenery(x: number, y: number): [number, number, number] {
  if (y < 90 && x < 200) return [120, 70, 160];
  if (y < 90 && x > 420) return (y / 30) % 1 < 0.1 ? [50, 90, 50] : [90, 160, 90];
  if (y > 290) return [150, 70, 60];
  if (x > 300 && x < 330 && y < 150) return [140, 80, 40];
  return [70, 70, 70];
}

describe('findLaserHue', () => {
  for (const colour of ['green', 'red'] as const) {
    for (const peak of [25, 150, 1500]) {
      it(`names a ${colour} line of peak ${peak} among coloured scenery`, () => {
        const crosstalk = peak > 255 ? 0.25 : 0.05;
        const lines = [{ rowPx, widthPx: 2, peak, colour, crosstalk }];
        const hue = findLaserHue(drawLaserScene({ ...SIZE, lines, noise: 2, ambient: scenery }));
        expect(hue.ok).toBe(true);
        if (!hue.ok) return;
        expect(hue.value.colour).toBe(colour);
        // The weakest line stands 6 deviations over the noise of one cell: some columns drown.
        expect(hue.value.columnShare).toBeGreaterThan(0.7);
        expect(hue.value.rivalShare).toBeLessThan(0.5);
      });
    }
  }

  it('says line-lost with its evidence when only scenery is there', () => {
    const hue = findLaserHue(drawLaserScene({ ...SIZE, lines: [], noise: 2, ambient: scenery }));
    expect(hue.ok).toBe(false);
    if (hue.ok) return;
    expect(hue.failure.code).toBe('line-lost');
    expect(Object.keys(hue.failure.evidence)).toContain('greenColumnShare');
  });

  it('looks only where it is told to', () => {
    const lines = [{ rowPx, widthPx: 2, peak: 150 }];
    const picture = drawLaserScene({ ...SIZE, lines, noise: 2 });
    expect(findLaserHue(picture, { x0: 0, y0: 0, x1: 640, y1: 120 }).ok).toBe(false);
    expect(findLaserHue(picture, { x0: 0, y0: 120, x1: 640, y1: 280 }).ok).toBe(true);
  });

  it('does not take a scrap of line for the line', () => {
    const scrap = (x: number): number => (x > 300 && x < 340 ? 200 : Number.NaN);
    const lines = [{ rowPx: scrap, widthPx: 2, peak: 150 }];
    expect(findLaserHue(drawLaserScene({ ...SIZE, lines, noise: 2 })).ok).toBe(false);
  });
});
