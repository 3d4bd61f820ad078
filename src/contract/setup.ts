import * as v from 'valibot';

import { failed, succeeded, type Outcome } from './outcome.ts';

/**
 * `tiltsweep.setup/1`: what a person knows of wheel, stand and camera before a sweep is read.
 * The bounds are those of anything a person could lay on such a stand; a value outside them is a
 * slip of the keyboard or of the unit.
 */

const between = (low: number, high: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high));

export const AddedWeightSchema = v.object({
  /** Negative for a weight taken off. */
  massG: between(-500, 500),
  radiusMm: between(50, 600),
  /** Wheel angle, clockwise seen from above, 0 at the valve. */
  angleDeg: between(-720, 720),
});

export const MarkColourSchema = v.picklist(['white', 'yellow', 'blue', 'red', 'green', 'orange']);

/** Sense of turning as seen from above. */
export const TurnSenseSchema = v.picklist(['clockwise', 'counter-clockwise']);

/** How a trial by hand before the sweep came out. */
const SightTestSchema = v.picklist(['confirmed', 'reversed']);

/** Missing is what was not tried. */
export const SightTestsSchema = v.object({
  /** The rim was pressed down at the sight: the edge was seen to go down there, or up. */
  up: v.optional(SightTestSchema),
  /** The wheel was turned clockwise: it was seen to turn so, or the other way. */
  turn: v.optional(SightTestSchema),
});

export const SetupSchema = v.object({
  format: v.literal('tiltsweep.setup/1'),
  label: v.optional(v.pipe(v.string(), v.maxLength(200))),
  wheel: v.object({
    massKg: between(2, 80),
    edgeRadiusMm: between(120, 600),
    weightRadiusMm: between(80, 500),
    boreDiameterMm: v.optional(between(20, 200)),
  }),
  stand: v.object({
    ballDiameterMm: between(20, 200),
    /** h: centre of mass below the ball's centre. */
    pendulumDepthMm: between(0.5, 100),
    lineAbovePlateMm: v.optional(between(0, 400)),
  }),
  camera: v.object({
    /** Angle of the optical axis below the horizontal. */
    downTiltDeg: between(3, 80),
    horizontalFovDeg: v.optional(between(20, 120)),
  }),
  sight: v.object({
    edgePoint: v.optional(
      v.object({ xPx: between(0, 10000), yPx: between(0, 10000), timeS: between(0, 86400) }),
    ),
    valveMark: v.object({ widthMm: between(3, 120), colour: MarkColourSchema }),
    tested: v.optional(SightTestsSchema),
  }),
  weightStepG: between(0.1, 100),
  /**
   * The way the wheel is turned, where the person vouches for it: a picture that shows the other
   * one is mirrored. Missing: either way is taken as it is seen.
   */
  turnSense: v.optional(TurnSenseSchema),
  after: v.optional(
    v.object({
      sweep: v.pipe(v.string(), v.minLength(1), v.maxLength(200)),
      added: v.pipe(v.array(AddedWeightSchema), v.minLength(1), v.maxLength(40)),
    }),
  ),
});

export type SweepSetup = v.InferOutput<typeof SetupSchema>;
export type SightTest = v.InferOutput<typeof SightTestSchema>;
export type SightTests = v.InferOutput<typeof SightTestsSchema>;
export type AddedWeight = v.InferOutput<typeof AddedWeightSchema>;
export type TurnSense = v.InferOutput<typeof TurnSenseSchema>;
/** The way every screen asks for: a picture that shows the other one may be a mirror's. */
export const ASKED_SENSE: TurnSense = 'clockwise';
export type MarkColour = v.InferOutput<typeof MarkColourSchema>;

/** Checks a parsed JSON value; a failure's evidence names the first value that is wrong and how. */
export function readSetup(json: unknown): Outcome<SweepSetup, 'setup-invalid'> {
  const parsed = v.safeParse(SetupSchema, json);
  if (parsed.success) return succeeded(parsed.output);
  const issue = parsed.issues[0];
  return failed('setup-invalid', {
    where: v.getDotPath(issue) ?? 'the whole file',
    problem: issue.message,
  });
}
