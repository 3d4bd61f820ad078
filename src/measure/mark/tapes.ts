import type { MarkColour } from '../../contract/setup.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { UNSEEN_LUMA, type ShoulderColour } from './shoulderColour.ts';

/**
 * The shoulder unrolled once round the wheel, and the tapes on it. All frames' views of one wheel
 * angle are averaged, so a tape is found where it sits on the wheel, not in any single picture.
 */
export interface ShoulderPanorama {
  /** Bins of {@link PANORAMA_STEP_DEG}; luma, U and V means; luma NaN where never seen. */
  readonly y: Float64Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
}

export interface Tape {
  /** Wheel angle of the tape's middle in the panorama's own zero, degrees in [0, 360). */
  readonly middleDeg: number;
  readonly widthDeg: number;
  readonly colour: MarkColour | 'other';
  /** How far it stands out from the rubber, in standard deviations of the rubber. */
  readonly contrast: number;
}

const PANORAMA_STEP_DEG = 0.25;
const BINS = 360 / PANORAMA_STEP_DEG;
/** Columns this far from the sight are seen too flat for a sharp border. */
const VIEW_HALF_DEG = 40;
/** Rubber differs round the wheel by dust and slots; a tape stands out by more than this many of it. */
const MIN_CONTRAST = 5;
/** The least difference from rubber (luma and colour steps) of any tape a person would see. */
const MIN_DIFFERENCE = 22;
/** Gaps in a tape narrower than this are slots under it, degrees. */
const JOIN_DEG = 1;
const MIN_WIDTH_DEG = 0.8;

/** `azimuthDeg` of each of the colour's columns; `turnDeg` of each frame. */
export function shoulderPanorama(
  frames: readonly { readonly colour: ShoulderColour; readonly turnDeg: number }[],
  azimuthDeg: ArrayLike<number>,
): ShoulderPanorama {
  const y = new Float64Array(BINS);
  const u = new Float64Array(BINS);
  const v = new Float64Array(BINS);
  const weight = new Float64Array(BINS);
  const usual = usualRubber(frames.map((f) => f.colour));
  for (const { colour, turnDeg } of frames) {
    const rubber = rubberOf(colour);
    if (!rubber) continue;
    // Exposure and white balance are the camera's own and drift: each view is brought to one rubber.
    const gain = usual.y / rubber.y;
    for (let i = 0; i < azimuthDeg.length; i++) {
      const azimuth = azimuthDeg[i];
      if (Math.abs(azimuth) > VIEW_HALF_DEG || colour.y[i] === UNSEEN_LUMA) continue;
      const bin = Math.floor(wrapTurnDeg(azimuth - turnDeg) / PANORAMA_STEP_DEG) % BINS;
      const w = Math.cos((azimuth * Math.PI) / 180) ** 2;
      y[bin] += w * gain * colour.y[i];
      u[bin] += w * (usual.u + gain * (colour.u[i] - rubber.u));
      v[bin] += w * (usual.v + gain * (colour.v[i] - rubber.v));
      weight[bin] += w;
    }
  }
  for (let b = 0; b < BINS; b++) {
    y[b] = weight[b] > 0 ? y[b] / weight[b] : NaN;
    u[b] = weight[b] > 0 ? u[b] / weight[b] : NaN;
    v[b] = weight[b] > 0 ? v[b] / weight[b] : NaN;
  }
  return { y, u, v };
}

interface Rubber {
  readonly y: number;
  readonly u: number;
  readonly v: number;
}

/** Views are asked again and again while a sweep goes on, and never change. */
const rubberKnown = new WeakMap<ShoulderColour, Rubber | null>();

function rubberOf(colour: ShoulderColour): Rubber | null {
  let rubber = rubberKnown.get(colour);
  if (rubber === undefined) {
    rubber = medianRubber(colour);
    rubberKnown.set(colour, rubber);
  }
  return rubber;
}

/** Luma and colour of the rubber in one view: tapes cover the lesser part of it, so the medians. */
function medianRubber({ y, u, v }: ShoulderColour): Rubber | null {
  if (y.every((luma) => luma === UNSEEN_LUMA)) return null;
  return { y: medianByte(y, y), u: medianByte(u, y), v: medianByte(v, y) };
}

/** Median of a plane's values, −128 to 255, where `luma` was seen. */
function medianByte(plane: Uint8Array | Int8Array, luma: Uint8Array): number {
  const counts = new Uint32Array(384);
  let seen = 0;
  for (let i = 0; i < plane.length; i++) {
    if (luma[i] === UNSEEN_LUMA) continue;
    counts[plane[i] + 128]++;
    seen++;
  }
  let value = 0;
  for (let below = counts[0]; below <= seen >> 1; below += counts[value]) value++;
  return value - 128;
}

function usualRubber(views: readonly ShoulderColour[]): Rubber {
  const rubbers = views.map(rubberOf).filter((r) => r !== null);
  const middle = (of: 'y' | 'u' | 'v') => medianOf(Float64Array.from(rubbers, (r) => r[of]));
  return { y: middle('y'), u: middle('u'), v: middle('v') };
}

export function findTapes(panorama: ShoulderPanorama): Tape[] {
  const difference = differenceFromRubber(panorama);
  const known = [...difference].filter((d) => d === d).sort((a, b) => a - b);
  if (known.length < BINS / 8) return [];
  // Rubber fills most of the wheel: its own spread from the lower half of the differences.
  const rubberSd = Math.max(1.5, known[known.length >> 1] / 0.67);
  const high = Math.max(MIN_DIFFERENCE, MIN_CONTRAST * rubberSd);
  return stretchesAbove(difference, high / 2)
    .map((s) => describe(panorama, difference, s, rubberSd))
    .filter((t): t is Tape => t !== null && t.contrast * rubberSd >= high);
}

function differenceFromRubber(p: ShoulderPanorama): Float64Array {
  const [my, mu, mv] = [medianOf(p.y), medianOf(p.u), medianOf(p.v)];
  return p.y.map((y, b) => Math.hypot(y - my, 2 * (p.u[b] - mu), 2 * (p.v[b] - mv)));
}

interface Stretch {
  readonly first: number;
  readonly count: number;
}

/** Runs of bins above a threshold round the circle, joined over short gaps. */
function stretchesAbove(difference: Float64Array, threshold: number): Stretch[] {
  const join = Math.round(JOIN_DEG / PANORAMA_STEP_DEG);
  const on = (b: number) => difference[((b % BINS) + BINS) % BINS] > threshold;
  const found: Stretch[] = [];
  // Start where a gap precedes, so that no run is cut at the seam.
  let origin = 0;
  while (origin < BINS && [...Array(join + 1).keys()].some((k) => on(origin - 1 - k))) origin++;
  if (origin === BINS) return [];
  let first = -1;
  let last = -1;
  for (let b = origin; b < origin + BINS; b++) {
    if (!on(b)) continue;
    if (first >= 0 && b - last > join) {
      found.push({ first, count: last - first + 1 });
      first = -1;
    }
    if (first < 0) first = b;
    last = b;
  }
  if (first >= 0) found.push({ first, count: last - first + 1 });
  return found;
}

function describe(
  p: ShoulderPanorama,
  difference: Float64Array,
  s: Stretch,
  rubberSd: number,
): Tape | null {
  const bins = Array.from({ length: s.count }, (_, k) => (s.first + k) % BINS);
  const peak = [...bins.map((b) => difference[b])].sort((a, b) => a - b)[Math.floor(s.count * 0.8)];
  // Borders at half height of this tape's own difference, sub-bin.
  const [start, end] = halfHeightBorders(difference, s, peak / 2);
  const widthDeg = (end - start) * PANORAMA_STEP_DEG;
  if (widthDeg < MIN_WIDTH_DEG) return null;
  const core = bins.slice(Math.floor(s.count * 0.25), Math.max(1, Math.ceil(s.count * 0.75)));
  const meanOf = (values: Float64Array) =>
    core.reduce((sum, b) => sum + values[b], 0) / core.length;
  return {
    middleDeg: wrapTurnDeg(((start + end) / 2) * PANORAMA_STEP_DEG),
    widthDeg,
    colour: tapeColour(meanOf(p.y), meanOf(p.u), meanOf(p.v), medianOf(p.y)),
    contrast: peak / rubberSd,
  };
}

/** Positions in bins (left border of bin b is b) where the difference crosses `level`. */
function halfHeightBorders(difference: Float64Array, s: Stretch, level: number): [number, number] {
  const value = (b: number) => difference[((b % BINS) + BINS) % BINS];
  let a = s.first;
  while (a < s.first + s.count - 1 && value(a) < level) a++;
  let z = s.first + s.count - 1;
  while (z > a && value(z) < level) z--;
  const rise = (value(a) - level) / Math.max(1e-9, value(a) - value(a - 1));
  const fall = (value(z) - level) / Math.max(1e-9, value(z) - value(z + 1));
  const inside = (part: number) => (part === part ? Math.max(0, Math.min(1, part)) : 0);
  return [a + 0.5 - inside(rise), z + 0.5 + inside(fall)];
}

/** Below this colour difference for its luma a tape is white (or grey), and below this at all noise. */
const COLOURLESS_PER_LUMA = 0.1;
const COLOURLESS_MIN = 4;
/** White tape goes yellow with age, dust and lamps, up to this; yellow tape has twice as much under dirt. */
const YELLOWED_PER_LUMA = 0.18;
const YELLOW_HUE_DEG = 172;
const YELLOWED_HUE_REACH_DEG = 45;

/** Nearest hue of the common tapes in the (U, V) plane; BT.601 hues of the full colours. */
function tapeColour(y: number, u: number, v: number, rubberY: number): MarkColour | 'other' {
  // Colourless and darker than rubber is a shadow, a slot or dirt; white tape is brighter.
  const hue = (Math.atan2(v, u) * 180) / Math.PI;
  const isYellowish = hueDistanceDeg(hue, YELLOW_HUE_DEG) < YELLOWED_HUE_REACH_DEG;
  const colourlessPerLuma = isYellowish ? YELLOWED_PER_LUMA : COLOURLESS_PER_LUMA;
  if (Math.hypot(u, v) < Math.max(COLOURLESS_MIN, colourlessPerLuma * y))
    return y > rubberY ? 'white' : 'other';
  const hues: readonly [MarkColour, number][] = [
    ['yellow', YELLOW_HUE_DEG],
    ['orange', 135],
    ['red', 108],
    ['green', -128],
    ['blue', -10],
  ];
  let best: MarkColour | 'other' = 'other';
  let nearest = 50;
  for (const [colour, at] of hues) {
    const away = hueDistanceDeg(hue, at);
    if (away < nearest) {
      nearest = away;
      best = colour;
    }
  }
  return best;
}

function hueDistanceDeg(a: number, b: number): number {
  return Math.abs(((a - b + 540) % 360) - 180);
}

function medianOf(values: Float64Array): number {
  const known = values.filter((x) => x === x).sort();
  return known[known.length >> 1] ?? NaN;
}
