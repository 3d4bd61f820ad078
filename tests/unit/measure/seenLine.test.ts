import { describe, expect, it } from 'vitest';

import type { YuvPicture } from '../../../src/contract/picture.ts';
import type { SeenLine } from '../../../src/contract/sweep.ts';
import { createLineWatch, knowLine, watchLine } from '../../../src/measure/sight/lineWatch.ts';
import { SHED_POSE, shedView } from '../../fakes/shedView.ts';

const view = shedView();
const { widthPx, heightPx } = SHED_POSE;
const AT_S = 0.5;
/** A picture in which there is no line. */
const BLACK: YuvPicture = {
  ...{ widthPx, heightPx, timeS: AT_S, yStride: widthPx, chromaStride: widthPx / 2 },
  ...{ y: new Uint8Array(widthPx * heightPx), chromaStep: 1, chromaShift: 1, fullRange: true },
  u: new Uint8Array((widthPx * heightPx) / 4).fill(128),
  v: new Uint8Array((widthPx * heightPx) / 4).fill(128),
};

/** An earlier look's curve, some pixels off this one's, and a line 3 px below this one's. */
function seenLine(offPx: (column: number) => number): SeenLine {
  const { curvePx, stepPx, x0, x1 } = createLineWatch(view);
  const rowPx = Float32Array.from(
    { length: Math.floor((x1 - x0) / stepPx) },
    (_, i) => curvePx[x0 + i * stepPx] + 3,
  );
  return {
    curvePx: curvePx.map((row, column) => row + offPx(column)),
    rows: new Map([[AT_S, { firstColumn: x0, stepPx, rowPx }]]),
  };
}

function watchKnowing(seen: SeenLine) {
  const watch = createLineWatch(view);
  knowLine(watch, seen);
  return watch;
}

describe('knowLine', () => {
  it('counts what an earlier look saw from its own curve', () => {
    const { share, offsetPx } = watchLine(watchKnowing(seenLine(() => 1)), view, BLACK);
    expect(share).toBeGreaterThan(0.8);
    expect(offsetPx).toHaveLength(view.layout.azimuthsDeg.length);
    for (const offset of offsetPx) expect(offset).toBeCloseTo(3, 3);
  });

  it('looks itself in a picture that was left out', () => {
    const watch = watchKnowing(seenLine(() => 1));
    expect(watchLine(watch, view, { ...BLACK, timeS: 0.6 }).share).toBe(0);
  });

  it('looks itself where the earlier look looked elsewhere, or not at all', () => {
    const bentPx = (column: number) => 12 * (column / widthPx - 0.5);
    for (const offPx of [() => 5, bentPx, (column: number) => (column > 900 ? NaN : 0)])
      expect(watchLine(watchKnowing(seenLine(offPx)), view, BLACK).share).toBe(0);
    const { curvePx, rows } = seenLine(() => 0);
    const other = { curvePx: curvePx.slice(1), rows };
    expect(watchLine(watchKnowing(other), view, BLACK).share).toBe(0);
  });

  it('finds what it kept itself', () => {
    const first = createLineWatch(view);
    first.kept = new Map();
    watchLine(first, view, BLACK);
    expect([...first.kept.keys()]).toEqual([AT_S]);
    expect(first.kept.get(AT_S)!.rowPx.every(Number.isNaN)).toBe(true);
  });
});
