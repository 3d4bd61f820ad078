import type { YuvPicture } from '../../contract/picture.ts';
import { markUsableCells } from '../band/laserMask.ts';
import { BAND_ROWS, unrollPicture } from '../band/treadBand.ts';
import { ANY_SHARE, blockProfiles } from '../edge/blockProfiles.ts';
import { riseAt } from '../edge/leanFit.ts';
import { addToTemplate, createTiltTracker, trackLean } from '../edge/tiltTracker.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';
import { heightScaleMmPerPx } from '../geometry/heightScale.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import type { WheelView } from './wheelView.ts';

/** What the first pictures show of the tread. */
export interface FirstLook {
  /** Mean height profile of each block as the first picture shows it, blocks × rows; NaN where never seen. */
  readonly profiles: Float32Array;
  /** Height of the tapped point as it would stand in the first picture, mm above the line; null without a tap. */
  readonly tapMm: number | null;
}

/** Pictures averaged. */
const EDGE_PICTURES = 8;
/** Half width of the line in RMS widths that still adds light. */
const STRIP_SPREADS = 1.6;
/** The strip about the line that is never used: its half width is within these, mm. */
const STRIP_HALF_MIN_MM = 0.8;
const STRIP_HALF_MAX_MM = 3;
/** A tap farther off the line than this was not meant for the tread, mm. */
const TAP_REACH_MM = 30;
/** A tap belongs to the picture nearest in time; with none so near it is not known when it was, s. */
const TAP_NEAR_S = 0.15;

/**
 * The pictures' profiles averaged against noise, each first carried back by what the wheel has leaned
 * since the first one: in the half second that they take a rocking wheel moves its edge by some
 * millimetres, and plainly averaged the edge lay beside its place, at a lean that never was.
 */
export function* firstLook(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<FirstLook> {
  const stripHalfMm = lineStripHalfMm(view);
  const blocks = view.layout.azimuthsDeg.length;
  const tracker = createTiltTracker(view.basis, { first: 0, last: BAND_ROWS - 1 });
  const one = new Float32Array(blocks * BAND_ROWS);
  const risenMm: { readonly timeS: number; readonly mm: number }[] = [];
  for (const picture of pictures.slice(0, EDGE_PICTURES)) {
    yield;
    unrollPicture(view.band, picture);
    markUsableCells(view.band, view.sight.laserColour, stripHalfMm);
    blockProfiles(view.band, view.layout, one, ANY_SHARE);
    const isMatched = trackLean(tracker, one) !== null;
    const lean = tracker.last!;
    // Too dim to be matched by itself, it still helps where the wheel was last seen.
    if (!isMatched) addToTemplate(tracker, one, lean);
    risenMm.push({ timeS: picture.timeS, mm: riseAt(view.basis, lean, blocks >> 1) });
  }
  return { profiles: tracker.template, tapMm: tapHeightMm(view, risenMm) };
}

/** Half height of the strip about the line that is left out, mm: the line's own width. */
export function lineStripHalfMm(view: WheelView): number {
  const { camera, sightPx, lineSpreadPx } = view.sight;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  const spreadMm = lineSpreadPx * heightScaleMmPerPx(camera, radiusMm, sightPx.xPx, sightPx.yPx);
  return Math.min(STRIP_HALF_MAX_MM, Math.max(STRIP_HALF_MIN_MM, STRIP_SPREADS * spreadMm));
}

function tapHeightMm(
  { setup, sight }: WheelView,
  risenMm: readonly { readonly timeS: number; readonly mm: number }[],
): number | null {
  const tap = setup.sight.edgePoint;
  if (!tap) return null;
  const point = cylinderPointAtPixel(sight.camera, setup.wheel.edgeRadiusMm, tap.xPx, tap.yPx);
  if (!point || Math.abs(point.zMm) >= TAP_REACH_MM) return null;
  const away = (at: { readonly timeS: number }) => Math.abs(at.timeS - tap.timeS);
  const then = risenMm.reduce((a, b) => (away(b) < away(a) ? b : a));
  return point.zMm - (away(then) <= TAP_NEAR_S ? then.mm : 0);
}
