import { readFileSync } from 'node:fs';

/**
 * The per-frame part of a rendered sweep's truth file. Read by this tool only: for scoring, never
 * for reading.
 */
export interface StageTruth {
  readonly unbalance: { readonly amountGmm: number; readonly heavySpotDeg: number };
  /** Amplitude and place of the once-round rise on the still wheel, without run-out. */
  readonly edge: {
    readonly riseMm: number;
    readonly highSpotDeg: number;
    readonly radiusMm: number;
  };
  readonly stand: { readonly leanMrad: number; readonly highAzimuthDeg: number };
  readonly mmPerPxAtSight: { readonly height: number };
  readonly azimuthsDeg: readonly number[];
  readonly frames: readonly FrameTruth[];
}

export interface FrameTruth {
  readonly timeS: number;
  readonly turnDeg: number;
  /** Components toward azimuth 0 and 90, mrad, pointing at the high side. */
  readonly tiltWheelMrad: readonly [number, number];
  readonly tiltStandMrad: readonly [number, number];
  readonly tiltRockingMrad: readonly [number, number];
  /** One entry for each of `azimuthsDeg`. */
  readonly edgePx: readonly (readonly [number, number])[];
  readonly linePx: readonly (readonly [number, number])[];
  readonly lineSeen: readonly number[];
  readonly lineOnFacePx: readonly (readonly [number, number])[];
  readonly edgeHeightMm: readonly number[];
}

/** Null when the file has no frames: films made from others carry only the wheel's truth. */
export function readStageTruth(file: string): StageTruth | null {
  const parsed = JSON.parse(readFileSync(file, 'utf8')) as Partial<StageTruth>;
  return parsed.frames && parsed.frames.length > 0 ? (parsed as StageTruth) : null;
}

/** Times in film and truth file are rounded to a tenth of a millisecond; half a frame is far off. */
const SAME_FRAME_S = 0.012;

/** The truth of the picture taken at a time; null when there is none. */
export function truthAt(truth: StageTruth, timeS: number): FrameTruth | null {
  const { frames } = truth;
  let low = 0;
  let high = frames.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (frames[middle].timeS < timeS - SAME_FRAME_S) low = middle + 1;
    else high = middle;
  }
  return Math.abs(frames[low].timeS - timeS) <= SAME_FRAME_S ? frames[low] : null;
}

/** Tilt of the wheel in one picture, radians toward azimuth 0 and 90. */
export function trueLean(frame: FrameTruth): { toward: number; across: number } {
  const sum = (i: 0 | 1) =>
    (frame.tiltWheelMrad[i] + frame.tiltStandMrad[i] + frame.tiltRockingMrad[i]) / 1000;
  return { toward: sum(0), across: sum(1) };
}

/** Linear interpolation in a table whose keys rise or fall; NaN outside. */
export function interpolate(
  keys: readonly number[],
  values: readonly number[],
  key: number,
): number {
  const rises = keys[keys.length - 1] > keys[0];
  for (let i = 1; i < keys.length; i++) {
    const [a, b] = rises ? [keys[i - 1], keys[i]] : [keys[i], keys[i - 1]];
    if (key < a || key > b) continue;
    const part = (key - keys[i - 1]) / (keys[i] - keys[i - 1]);
    return values[i - 1] + part * (values[i] - values[i - 1]);
  }
  return NaN;
}
