import type { TreadBand } from './treadBand.ts';

/**
 * Tells a picture that is the last one once more: a camera that stalls, or a film that was padded,
 * repeats pictures while the wheel turns on. Taken as new ones they would say that the wheel stood,
 * and the jump at their end could be any number of tread pitches.
 */
export interface RepeatWatch {
  /** Samples of the last picture that was new; empty before the first. */
  last: Uint8Array;
  /** Mean change of luma from picture to picture while the wheel turned, steps of 255. */
  turningChange: number;
}

/** Every so many cells of the band: some 5,000 samples; a prime number, so that no column is left out. */
const SAMPLE_STEP = 19;
/** No more than rounding: a camera's noise, even where a coder has flattened it, is above. */
const IDENTICAL_LUMA = 0.01;
/**
 * A film coded once more does not repeat to the bit. But a wheel that turned this fast cannot stand
 * at once: braked by 150°/s² it still moves by 0.2°, which on the tread is a pixel or more, °/s.
 */
const TURNING_DEG_PER_S = 8;
/** Against the usual change while turning: a coder's afterthoughts are below, a pixel's way above. */
const UNCHANGED_SHARE = 0.12;
/** Share of the newest picture in the usual change. */
const CHANGE_MEMORY = 0.1;

export function createRepeatWatch(): RepeatWatch {
  return { last: new Uint8Array(0), turningChange: 0 };
}

/**
 * Whether the band just unrolled shows what the last new picture showed; if not, it is kept.
 * `rateDegPerS` is how fast the wheel turned up to that picture.
 */
export function isRepeated(watch: RepeatWatch, band: TreadBand, rateDegPerS: number): boolean {
  const { luma } = band;
  const count = Math.ceil(luma.length / SAMPLE_STEP);
  const turning = Math.abs(rateDegPerS) > TURNING_DEG_PER_S;
  if (watch.last.length === count) {
    let sum = 0;
    for (let k = 0, i = 0; k < count; k++, i += SAMPLE_STEP)
      sum += Math.abs(luma[i] - watch.last[k]);
    const change = sum / count;
    if (change < IDENTICAL_LUMA) return true;
    if (turning && change < UNCHANGED_SHARE * watch.turningChange) return true;
    if (turning) watch.turningChange += CHANGE_MEMORY * (change - watch.turningChange);
  } else {
    watch.last = new Uint8Array(count);
  }
  for (let k = 0, i = 0; k < count; k++, i += SAMPLE_STEP) watch.last[k] = luma[i];
  return false;
}
