import * as v from 'valibot';

import { MarkColourSchema } from '../../../src/contract/setup.ts';

/**
 * Everything that the practice stand is, in numbers: one truth for both renderers, for the motion
 * and for the files beside a film. Lengths mm, masses g (wheel kg), angles degrees; conventions of
 * wheel angle, azimuth and heights as everywhere. What a scene file leaves out is as given here.
 */
const number = (low: number, high: number, usual: number) =>
  v.optional(v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high)), usual);
const needed = (low: number, high: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high));
const degrees = (usual: number) => number(-720, 720, usual);

const GrooveSchema = v.strictObject({
  /** Upper rim of the groove, mm along the profile above the tread's middle. */
  topMm: needed(-80, 80),
  widthMm: number(2, 20, 8),
  depthMm: number(1, 9, 7.5),
});

/**
 * A tread of blocks without one continuous rib: cross grooves run right through it at uneven pitch, and
 * what parts the rows of blocks steps up and down from block to block. `grooves` should then be empty.
 */
const BlocksSchema = v.strictObject({
  /** Between the rows of blocks, as grooves are given. */
  gaps: v.optional(v.array(GrooveSchema), [
    { topMm: 30, widthMm: 9 },
    { topMm: 0, widthMm: 8 },
    { topMm: -28, widthMm: 8 },
  ]),
  crossWidthMm: number(1, 20, 7),
  crossDepthMm: number(1, 8, 7),
  /** How far round the wheel a cross groove runs on its way over a row, of the pitch: 0 straight. */
  slant: number(0, 0.8, 0.25),
  /** Every gap stands so far above its place at one block and so far below at the next. */
  stepMm: number(0, 6, 2),
});

/**
 * A band of dull white tape that a hand stuck round the shoulder. Its lower border, on the whole
 * `edgeAboveMiddleMm`, is then the edge that is followed.
 */
const BandSchema = v.strictObject({
  widthMm: number(4, 40, 12),
  /** Once-round error of the hand, as a height of the border, and where it is high. */
  offSquareMm: number(0, 3, 0.5),
  highAtDeg: degrees(0),
  /** Unsteadiness of the hand from hand's breadth to hand's breadth, standard deviation. */
  unevenMm: number(0, 1.5, 0.25),
  /** Frayed and dented border, over a few mm of its length, standard deviation. */
  raggedMm: number(0, 1, 0.15),
  /** Where its ends overlap, and how far the upper end stands beside the lower one. */
  joinDeg: degrees(150),
  joinStepMm: number(-5, 5, 1),
  /** 0 new, 1 so dirty that it is hardly lighter than dust. */
  dirt: number(0, 1, 0.3),
});

/** A strip of tape across the shoulder; the first of a scene's is the valve's. */
const TapeSchema = v.strictObject({
  middleDeg: degrees(0),
  widthMm: number(5, 60, 22),
  colour: MarkColourSchema,
  /** 0 new, 1 so dirty that it is hardly lighter than dust. */
  dirt: number(0, 1, 0),
  /** Ends torn off by hand: how far they stand out and in, standard deviation. */
  raggedMm: number(0, 6, 0),
});

const WaveSchema = v.strictObject({
  /** Waves round the wheel: 1 is once round. */
  order: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(6)),
  amplitudeMm: needed(0, 3),
  highAtDeg: degrees(0),
});

const WeightSchema = v.strictObject({
  massG: needed(-500, 500),
  radiusMm: number(50, 600, 185),
  angleDeg: degrees(0),
});

const TurnPointSchema = v.strictObject({ timeS: needed(0, 600), turnDeg: needed(-3600, 3600) });

const wheel = v.strictObject({
  massKg: number(4, 40, 16.5),
  edgeRadiusMm: number(240, 400, 309),
  weightRadiusMm: number(120, 260, 185),
  boreDiameterMm: number(40, 90, 57),
  /** Radius of gyration about a diameter through the centre of mass. */
  transverseGyrationMm: number(100, 260, 172),
  spinOverTransverseInertia: number(1.2, 2, 1.7),
  unbalance: v.optional(
    v.strictObject({ amountGmm: number(0, 40000, 3700), heavySpotDeg: degrees(0) }),
    {},
  ),
  /** Weights stuck on; they count beside the unbalance and are seen on the rim. */
  weights: v.optional(v.array(WeightSchema), []),
});

const tyre = v.strictObject({
  /** Height of the tread edge above the tread's middle, along the profile: top of a groove. */
  edgeAboveMiddleMm: number(5, 60, 30),
  crownRadiusMm: number(300, 5000, 850),
  treadHalfWidthMm: number(50, 130, 80),
  shoulderRadiusMm: number(8, 60, 26),
  sectionHalfWidthMm: number(70, 170, 106),
  /** Where tyre and rim meet. */
  flangeRadiusMm: number(160, 300, 210),
  grooves: v.optional(v.array(GrooveSchema), [{ topMm: 30 }, { topMm: 4 }, { topMm: -22 }]),
  blocks: v.optional(BlocksSchema),
  band: v.optional(BandSchema),
  pitches: v.optional(v.pipe(v.number(), v.integer(), v.minValue(40), v.maxValue(110)), 70),
  /** 0 clean, 1 as from a dirt road. */
  dust: number(0, 1, 0.12),
  /** Lateral run-out of the tread, waves round the wheel. */
  lateralRunOut: v.optional(v.array(WaveSchema), [
    { order: 2, amplitudeMm: 0.08, highAtDeg: 40 },
    { order: 3, amplitudeMm: 0.05, highAtDeg: 110 },
  ]),
  /** Radial run-out once round: the tread's axis stands beside that of the bore. */
  radialRunOutMm: number(0, 3, 0.1),
  radialHighAtDeg: degrees(200),
  tapes: v.optional(v.array(TapeSchema), [{ colour: 'white' }]),
});

const stand = v.strictObject({
  ballDiameterMm: number(30, 150, 63.5),
  /** h: centre of mass below the ball's centre. */
  pendulumDepthMm: number(2, 60, 8.2),
  lineAbovePlateMm: number(20, 150, 51),
  /** Height of the edge above the line on the upright wheel. */
  edgeAboveLineMm: number(-30, 30, -3),
  slopeMrad: number(0, 30, 0.5),
  downhillAzimuthDeg: degrees(40),
  dampingRatio: number(0.001, 0.3, 0.02),
  /** Swing of the rim that is on the wheel at the start. */
  startSwingMm: number(0, 20, 0.4),
  /** Unsteadiness of the hand: swing of the rim that it keeps alive while it turns. */
  handSwingMm: number(0, 5, 0.3),
});

const laser = v.strictObject({
  colour: v.optional(v.picklist(['green', 'red']), 'green'),
  /** RMS thickness of the sheet on the tread. */
  widthMm: number(0.2, 4, 0.7),
  /** Light at the crest on plain rubber, in parts of what saturates the camera. */
  peak: number(0, 20, 0.9),
  /** Share of the light in a skirt round the sheet, and its RMS width: halo of a cheap lens. */
  skirt: number(0, 0.5, 0.03),
  skirtWidthMm: number(1, 20, 4),
  sourceAzimuthDeg: number(-60, 60, 12),
  sourceDistanceMm: number(500, 3000, 1100),
  /** Slope of a sheet that is not level, and where it is high. */
  slopeMrad: number(0, 20, 0),
  highAzimuthDeg: degrees(0),
  offAtS: v.optional(needed(0, 600)),
});

const camera = v.strictObject({
  widthPx: v.optional(v.pipe(v.number(), v.integer(), v.minValue(160), v.maxValue(1920)), 1280),
  heightPx: v.optional(v.pipe(v.number(), v.integer(), v.minValue(120), v.maxValue(1080)), 720),
  horizontalFovDeg: number(30, 100, 64),
  downTiltDeg: number(15, 60, 32),
  yawDeg: number(-30, 30, 0),
  rollDeg: number(-15, 15, 0),
  distanceMm: number(450, 1200, 735),
  /** Above the laser plane. */
  heightMm: number(60, 700, 266),
  /** Share by which the picture's side is pulled in (negative) or pushed out. */
  distortion: number(-0.08, 0.08, -0.006),
  /** Noise of a mid-grey, steps of 255. */
  noise: number(0, 20, 1.8),
  exposure: number(0.05, 8, 1),
  frameRateHz: number(4, 60, 24),
});

const rim = v.strictObject({
  spokes: v.optional(v.pipe(v.number(), v.integer(), v.minValue(3), v.maxValue(14)), 7),
  colour: v.optional(v.picklist(['silver', 'dark']), 'silver'),
});

/** What the hand does in a film: turn at given times; a press on the rim under the camera. */
const hand = v.strictObject({
  turn: v.optional(v.pipe(v.array(TurnPointSchema), v.minLength(2)), [
    { timeS: 0, turnDeg: -35 },
    { timeS: 1, turnDeg: -35 },
    { timeS: 28, turnDeg: 365 },
    { timeS: 29.5, turnDeg: 365 },
  ]),
});

/** What a person would enter differently from the truth: a ruler and a phone are good to so much. */
const entered = v.strictObject({
  downTiltDeg: v.optional(needed(3, 80)),
  horizontalFovDeg: v.optional(v.nullable(needed(20, 120))),
  lineAbovePlateMm: v.optional(v.nullable(needed(0, 400))),
  tapEdge: v.optional(v.boolean(), true),
});

export const StandSceneSchema = v.strictObject({
  format: v.literal('tiltsweep.scene/1'),
  label: v.optional(v.pipe(v.string(), v.maxLength(200)), 'shed wheel'),
  /** Draws tread pitches, dust, noise, the hand's unsteadiness. */
  seed: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(2 ** 31)), 1),
  /** The code of the refusal that is right, where the film must not be read. */
  shouldRefuse: v.optional(v.nullable(v.string()), null),
  wheel: v.optional(wheel, {}),
  tyre: v.optional(tyre, {}),
  rim: v.optional(rim, {}),
  stand: v.optional(stand, {}),
  laser: v.optional(laser, {}),
  camera: v.optional(camera, {}),
  hand: v.optional(hand, {}),
  entered: v.optional(entered, {}),
});

export type StandScene = v.InferOutput<typeof StandSceneSchema>;
export type StandSceneInput = Omit<v.InferInput<typeof StandSceneSchema>, 'format'>;
export type StandBlocks = v.InferOutput<typeof BlocksSchema>;
export type StandBand = v.InferOutput<typeof BandSchema>;
export type StandTape = v.InferOutput<typeof TapeSchema>;
export type StandWeight = v.InferOutput<typeof WeightSchema>;
export type TurnPoint = v.InferOutput<typeof TurnPointSchema>;
