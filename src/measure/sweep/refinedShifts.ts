import { BAND_ROWS, rowOfZ } from '../band/treadBand.ts';
import { fitLean, type Lean } from '../edge/leanFit.ts';
import { lightBand, type LightBand } from '../edge/lightBand.ts';
import { profileRelief } from '../edge/profileRelief.ts';
import {
  addToTemplate,
  createTiltTracker,
  LIFT_SD_MM,
  matchFrame,
  type TiltTracker,
} from '../edge/tiltTracker.ts';
import { grooveFloors } from './grooveFloors.ts';
import {
  blockMotions,
  carriedBack,
  carriedTo,
  rowMotion,
  type BlockMotion,
  type RowMotion,
} from './rowMotion.ts';
import { bandRows, rowWeights } from './rowWeights.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { deviationAboutZero, leftOfPlanes, UNEVEN_MM, unevenMm } from './unevenEdge.ts';

/**
 * All frames' block shifts against one template made of the whole sweep: what the tracker said as
 * it went along, measured once more against the mean of everything it saw.
 */
export interface RefinedShifts {
  /** Rise of the edge in each block from the template's place, mm, frames × blocks, NaN where not seen. */
  readonly shiftMm: Float32Array;
  readonly standardErrorMm: Float32Array;
  readonly leans: readonly (Lean | null)[];
  readonly template: Float32Array;
  /** The band of light tape on the tread; null without one. */
  readonly band: FollowedBand | null;
  /** Deviation of the blocks from their pictures' planes, one standard deviation, mm. */
  readonly unevenMm: number;
}

export interface FollowedBand extends LightBand {
  /** Rise of the band beyond the tread's own, mm, frames × blocks; NaN where either was not seen. */
  readonly besideMm: Float32Array;
}

/** The tracker is already right within this; a block that wants more has hopped. */
const REACH_MM = 2.5;
/** Of blocks that step up and down hardly one is farther off; cut off nearer, they would hold the lean back. */
const REACH_PER_UNEVEN = 3;
/**
 * Gaps that step up and down leave but a shallow dip in the mean of all, and beside it what is left
 * of the laser's glow, which stands still, counts: it held every match back by a tenth. mm.
 */
const GLOW_MM = 16;
/** A row of the template must be seen in this share of the frames. */
const MIN_SEEN_SHARE = 0.25;
/** Rounds of template and standing light: each sharpens the other. */
const ROUNDS = 2;

/** Followed by the tread alone, or without what lies near the line, so many of the pictures must be told. */
const FOLLOWED_SHARE = 0.8;

/**
 * First by what should be free of errors: where a band outshines the tread by the tread, where it is
 * uneven by what lies off the line. Where that tells too little, by all there is.
 */
export function refineShifts(recording: SweepRecording): RefinedShifts {
  const { tilt, frames, edge } = recording;
  // All there is of an outline lies in the rows about it, one way or the other.
  if (edge.outline) return refineWith({ ...recording, view: recording.edgeView }, null, false);
  const band = lightBand(tilt.template, tilt.basis, edge.lean, tilt.window);
  const careful = refineWith(recording, band, true);
  const followed = frames.filter(({ lean }) => lean !== null).length;
  const told = careful.leans.filter((lean) => lean !== null).length;
  const isSame = !band?.treadTells && careful.unevenMm <= UNEVEN_MM;
  if (isSame || told >= FOLLOWED_SHARE * followed) return careful;
  return refineWith(recording, band && { ...band, treadTells: false }, false);
}

function refineWith(
  recording: SweepRecording,
  band: LightBand | null,
  isCareful: boolean,
): RefinedShifts {
  const { tilt, frames } = recording;
  const blocks = tilt.blocks;
  // What is groove the first template of the whole sweep tells.
  let motion = rowMotion(recording, new Float32Array(blocks * BAND_ROWS));
  const bandWeight = band?.treadTells ? bandRows(recording, band) : null;
  let uneven = unevenMm(recording);
  const besideMm = new Float32Array(frames.length * blocks).fill(NaN);
  let leans: readonly (Lean | null)[] = frames.map((frame) => frame.lean?.lean ?? null);
  const standing = new Float32Array(blocks * BAND_ROWS);
  const moving = new Float32Array(blocks * BAND_ROWS);
  const back = new Float32Array(blocks * BAND_ROWS);
  // Far aside whole profiles are read closer where the glow hides the edge (three of eight drawn wheels: 0.2,
  // 0.4 and 1.4 g off for 1.2, 1.2 and 1.8), the others alike; why is not found out.
  const isAside = recording.view.sight.asideDeg !== 0;
  const relief = new Float32Array(blocks * BAND_ROWS);
  const templateRelief = new Float32Array(blocks * BAND_ROWS);
  const shiftMm = new Float32Array(frames.length * blocks);
  const standardErrorMm = new Float32Array(frames.length * blocks);
  let whole: TiltTracker = createTiltTracker(tilt.basis, tilt.window);
  for (let round = 0; round < ROUNDS; round++) {
    const motions = blockMotions(recording, leans);
    // Nothing but a band near the line: it is followed, however uneven.
    const isUneven = isCareful && uneven > UNEVEN_MM && (!band || band.treadTells);
    const rowWeight = rowWeights(recording, band, isUneven);
    const reachMm = Math.max(REACH_MM, REACH_PER_UNEVEN * uneven);
    const glowMm = isUneven ? GLOW_MM : 0;
    const carried = (f: number, moved: BlockMotion) =>
      carriedBack(motion, moved, without(frames[f].profiles, standing, glowMm, moving), back);
    whole = createTiltTracker(tilt.basis, tilt.window, Infinity);
    motions.forEach((moved, f) => {
      if (moved) addToTemplate(whole, carried(f, moved), IN_PLACE);
    });
    forgetSeldomSeen(whole, frames.length);
    learnStanding(recording, whole, motion, motions, standing);
    motion = rowMotion(recording, floorsIn(recording, whole.template));
    shiftMm.fill(NaN);
    standardErrorMm.fill(NaN);
    const sought = isAside
      ? whole
      : { ...whole, template: profileRelief(whole.template, templateRelief) };
    leans = motions.map((moved, f) => {
      if (!moved) return null;
      const profiles = isAside ? carried(f, moved) : profileRelief(carried(f, moved), relief);
      const left = matchFrame(sought, profiles, IN_PLACE, reachMm, rowWeight);
      if (!left) return null;
      const at = f * blocks;
      const stuck = bandWeight && matchFrame(sought, profiles, IN_PLACE, reachMm, bandWeight);
      if (stuck)
        besideMm.set(
          stuck.shiftMm.map((s, b) => s - left.shiftMm[b]),
          at,
        );
      shiftMm.set(
        left.shiftMm.map((s, b) => s + moved.upMm[b]),
        at,
      );
      standardErrorMm.set(left.standardErrorMm, at);
      const [shift, error] = [shiftMm, standardErrorMm].map((v) => v.subarray(at, at + blocks));
      return fitLean(tilt.basis, shift, error, { liftMm: 0, liftSdMm: LIFT_SD_MM });
    });
    uneven = Math.max(uneven, deviationAboutZero(leftOfPlanes(tilt.basis, shiftMm, leans)));
  }
  return {
    shiftMm,
    standardErrorMm,
    leans,
    template: whole.template,
    band: band && { ...band, besideMm },
    unevenMm: uneven,
  };
}

/** Grooves' floors in a template; beside an outline nothing is one. */
function floorsIn({ edge }: SweepRecording, template: Float32Array): Float32Array {
  return edge.outline ? new Float32Array(template.length) : grooveFloors(template);
}

/** A frame already carried back: what its match still finds is what the first lean left. */
const IN_PLACE: Lean = { liftMm: 0, toward: 0, across: 0 };

/** Rows that few frames showed are the border of the laser's glow, not tread. */
function forgetSeldomSeen(whole: TiltTracker, frameCount: number): void {
  for (let i = 0; i < whole.template.length; i++) {
    if (whole.templateWeight[i] < MIN_SEEN_SHARE * frameCount) whole.template[i] = NaN;
  }
}

/** Profiles without the light that stands, and without the rows so near to the line. */
function without(
  profiles: Float32Array,
  standing: Float32Array,
  glowMm: number,
  out: Float32Array,
): Float32Array {
  for (let i = 0; i < out.length; i++) out[i] = profiles[i] - standing[i];
  if (glowMm === 0) return out;
  const from = Math.ceil(rowOfZ(glowMm));
  const to = Math.floor(rowOfZ(-glowMm)) + 1;
  for (let start = 0; start < out.length; start += BAND_ROWS)
    out.fill(NaN, start + from, start + to);
  return out;
}

/**
 * Light that stands in the room while the tread moves through it: the laser's glow, a lamp's
 * reflection. Mean of what the profiles show beside the template carried to each frame's place;
 * left in, it would hold every match back toward standing still.
 */
function learnStanding(
  recording: SweepRecording,
  whole: TiltTracker,
  motion: RowMotion,
  motions: readonly (BlockMotion | null)[],
  standing: Float32Array,
): void {
  const { frames } = recording;
  const sum = new Float64Array(standing.length);
  const count = new Float64Array(standing.length);
  const there = new Float32Array(standing.length);
  motions.forEach((moved, f) => {
    if (!moved) return;
    carriedTo(motion, moved, whole.template, there);
    for (let i = 0; i < there.length; i++) {
      const beside = frames[f].profiles[i] - there[i];
      if (beside !== beside) continue;
      sum[i] += beside;
      count[i]++;
    }
  });
  const enough = MIN_STANDING_SHARE * frames.length;
  for (let i = 0; i < standing.length; i++) standing[i] = count[i] > enough ? sum[i] / count[i] : 0;
}

/** A row must be seen in this share of the frames before a standing part of it can be told. */
const MIN_STANDING_SHARE = 0.2;
