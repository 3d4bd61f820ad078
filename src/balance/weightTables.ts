import type { FreeWay } from './freeArcs.ts';
import type { Load } from './weightStock.ts';

/**
 * A load with the steps of the grid at which it fits: for each cell between two steps, counted by
 * its lower step, the nearest such step downward (the lower step itself included) and upward; −1
 * where it fits nowhere.
 */
export interface Fitted {
  readonly load: Load;
  readonly below: Int32Array;
  readonly above: Int32Array;
}

/** Loads of one number of pieces that fit somewhere, sorted by moment. */
interface Group {
  readonly fitted: readonly Fitted[];
  readonly moments: Float64Array;
  /** Cosine of the least turn from any direction in a cell to a step where any of them fits. */
  readonly offCosine: Float64Array;
}

export interface Tables {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  /** Steps in the order in which they are tried: outward from the spot, the likeliest first. */
  readonly outward: Int32Array;
  /** By number of pieces, from 0. */
  readonly groups: readonly Group[];
}

/** Everything about loads and places that a search over `count` steps asks for again and again. */
export function weightTables(
  loads: readonly Load[],
  free: readonly FreeWay[],
  count: number,
): Tables {
  const angles = Float64Array.from({ length: count }, (_, i) => (i * 2 * Math.PI) / count);
  const most = loads.reduce((a, load) => Math.max(a, load.pieces), 0);
  return {
    cos: angles.map(Math.cos),
    sin: angles.map(Math.sin),
    outward: Int32Array.from({ length: count }, (_, i) =>
      i % 2 === 1 ? (i + 1) / 2 : (count - i / 2) % count,
    ),
    groups: Array.from({ length: most + 1 }, (_, pieces) =>
      groupOf(
        loads.filter((load) => load.pieces === pieces),
        free,
        count,
      ),
    ),
  };
}

function groupOf(loads: readonly Load[], free: readonly FreeWay[], count: number): Group {
  const fitted = loads
    .map((load) => fittedTo(load, free[load.ring]!, count))
    .filter(({ below }) => below[0]! >= 0)
    .sort((a, b) => a.load.momentGmm - b.load.momentGmm);
  const offCosine = new Float64Array(count).fill(-1);
  for (const { below, above } of fitted) {
    for (let cell = 0; cell < count; cell += 1) {
      const back = (cell - below[cell]! + count) % count;
      const onward = (above[cell]! - cell - 1 + count) % count;
      const off = Math.cos((Math.min(back, onward) * 2 * Math.PI) / count);
      if (off > offCosine[cell]!) offCosine[cell] = off;
    }
  }
  const moments = Float64Array.from(fitted, ({ load }) => load.momentGmm);
  return { fitted, moments, offCosine };
}

/** Whether a load may lie at a step. */
export function fitsAt(free: FreeWay, load: Load, step: number): boolean {
  return free.aheadDeg[step]! >= load.aheadDeg && free.behindDeg[step]! >= load.behindDeg;
}

function fittedTo(load: Load, free: FreeWay, count: number): Fitted {
  const below = new Int32Array(count).fill(-1);
  const above = new Int32Array(count).fill(-1);
  let last = -1;
  let next = -1;
  // Twice round, so that the nearest step is found across the seam too.
  for (let i = 0; i < 2 * count; i += 1) {
    const up = i % count;
    if (fitsAt(free, load, up)) last = up;
    below[up] = last;
    const down = (2 * count - 1 - i) % count;
    above[down] = next;
    if (fitsAt(free, load, down)) next = down;
  }
  return { load, below, above };
}

/** The cell in which a direction lies, counted by its lower step. */
export function cellOf(count: number, vx: number, vy: number): number {
  const cell = Math.floor((Math.atan2(vy, vx) / (2 * Math.PI)) * count);
  return (cell + count) % count;
}
