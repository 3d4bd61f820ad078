import type { EdgeKind } from './followedEdge.ts';
import type { AcceptedReading, Reading } from './reading.ts';
import type { RefusalCode } from './refusals.ts';
import type { SweepSetup, TurnSense } from './setup.ts';
import type { YuvPicture } from './picture.ts';
import type { NotePiece } from './sweepNotes.ts';
import type { TurnSpeed } from './turnSpeed.ts';

/**
 * The measuring core as seen from outside: pictures in, one at a time and in order of time;
 * progress out after each; one result at the end. It knows no browser and no OpenCV; the worker
 * drives it with decoded or live frames, a test drives it with drawn ones.
 */
export interface SweepReader {
  /** Takes what it needs from the picture; the caller may reuse or close it on return. */
  addFrame(picture: YuvPicture): SweepProgress;
  /**
   * Whether the picture of this time is worth handing over: asked before each one, in order of time.
   * Never false but with {@link SweepReaderOptions.mayLeaveOut}; one that is handed over all the same is taken.
   */
  needs(timeS: number): boolean;
  /** Fits what was seen so far. May be called more than once, also in mid-sweep. */
  finish(): SweepResult;
  /**
   * What the whole sweep taught about camera and edge, when it differs so much from the first look
   * that pictures which can be had again (a film) are worth reading again with it; else null.
   * `whole` where pictures were left out and no better view came of it: then all are to be read, by
   * a reader that leaves none out.
   */
  secondLook(): SecondLook | 'whole' | null;
  /**
   * What is known by now of camera and edge, for another reader before the same camera
   * ({@link SweepReaderOptions.sameCamera}); the whole sweep's better view once `finish` has made
   * one. Null until the sight is found.
   */
  sightNow(): SightMemory | null;
  /**
   * What was measured since it was last asked for, to be kept outside of the reader; null when
   * that is nothing, or the sweep is longer than its notes may be.
   */
  takeNotes(): NotePiece | null;
}

export type CreateSweepReader = (setup: SweepSetup, options?: SweepReaderOptions) => SweepReader;

export interface SweepReaderOptions {
  /** The reading of the sweep that `setup.after` names: the response is then measured. */
  readonly earlier?: AcceptedReading;
  /** From an earlier pass over the same pictures: nothing is looked for any more. */
  readonly sight?: SightMemory;
  /** From the same pass: the line is not looked for again where it was found. */
  readonly seenLine?: SeenLine;
  /**
   * The pictures can be had again (a film): once it shows that they will be read with a better view,
   * those that this view does not need are left out (`needs`).
   */
  readonly mayLeaveOut?: boolean;
  /** Memory for pictures kept while the view is open to doubt, bytes; missing: what a tablet can spare. */
  readonly keptBytes?: number;
  /** Camera known from another reader: only the wheel's lean, and the edge if need be, are looked for. */
  readonly sameCamera?: KnownCamera;
  /** The camera on the tablet's face, which some tablets mirror: said beside the reading. */
  readonly mayMirror?: boolean;
  /** The way the screens ask for while the sweep runs; missing where nobody was asked (a film). */
  readonly askedSense?: TurnSense;
  /**
   * For showing and leading: goes on for ever in bounded memory by forgetting what lies more than
   * about a turn back. `finish` then reads only what is left.
   */
  readonly followOnly?: boolean;
  /**
   * The pictures come from a camera, which does not wait: what takes longer than a picture lasts is
   * spread over those that follow. A film waits, and finds everything at the first picture that shows it.
   */
  readonly live?: boolean;
}

/**
 * A camera that stood here before. Its first pictures are held against it: when the line is not
 * where it was, the camera has moved, and the reader looks for everything anew.
 */
export interface KnownCamera {
  readonly sight: SightMemory;
  /** False when the edge is to be chosen anew (`setup.sight.edgePoint`, or the program's own choice). */
  readonly edgeKnown: boolean;
}

/** Camera, line and edge of one film, as plain data. */
export interface SightMemory {
  readonly pose: {
    readonly widthPx: number;
    readonly heightPx: number;
    readonly focalPx: number;
    readonly radial: number;
    readonly downTiltDeg: number;
    readonly yawDeg: number;
    readonly rollDeg: number;
    readonly distanceMm: number;
    readonly heightMm: number;
  };
  /** Covariance of the pose as its fit gave it, 7×7, and the fit's residual. */
  readonly poseCovariance: Float64Array;
  readonly poseResidualPx: number;
  readonly laserColour: 'green' | 'red';
  readonly lineSpreadPx: number;
  /** Picture column on whose line azimuth 0 lies within the measuring core; the middle one if missing. */
  readonly originColumnPx?: number;
  /** Height of the edge above the line with the wheel upright, mm. */
  readonly edgeHeightMm: number;
  /** True where the edge showed nowhere and is taken to lie under the line; missing: it was seen. */
  readonly edgeAssumed?: boolean;
  /** Lean in the film's first picture, radians toward azimuth 0 and 90; positive = that side high. */
  readonly firstLeanToward: number;
  readonly firstLeanAcross: number;
  /**
   * True degrees in a degree of turn as the tread is seen to move with this camera, from a turn
   * that closed; missing until one has. Without it a turn is told to 0.2–2 %.
   */
  readonly turnScale?: number;
}

/** What a first look over a film teaches a second one. */
export interface SecondLook {
  readonly sight: SightMemory;
  readonly seenLine: SeenLine;
}

/** Where one look over a film saw the line: its rows in the picture hang on no view of the wheel. */
export interface SeenLine {
  /** Row about which it was looked for, by picture column, px; NaN where it was not. */
  readonly curvePx: Float32Array;
  /** Its rows in each picture that was measured, by the picture's time, s. */
  readonly rows: ReadonlyMap<number, LineRows>;
}

/** Rows of the line in every so many columns of one picture, px; NaN where none was found. */
export interface LineRows {
  readonly firstColumn: number;
  readonly stepPx: number;
  readonly rowPx: Float32Array;
}

/** What a {@link SightMemory} holds of the camera alone. */
export type KnownView = Omit<
  SightMemory,
  'edgeHeightMm' | 'edgeAssumed' | 'firstLeanToward' | 'firstLeanAcross' | 'turnScale'
>;

/** Wheel angles are told apart by sectors this wide when it is said what has been covered. */
export const SECTOR_DEG = 5;
export const SECTOR_COUNT = 360 / SECTOR_DEG;

export interface SweepProgress {
  /** looking: line and edge not found yet; following: all is seen; lost: was followed, is not now. */
  readonly stage: 'looking' | 'following' | 'lost';
  /** What is wrong at this moment: while looking or lost, or a whole sweep that would be in vain (mirrored). */
  readonly trouble: RefusalCode | null;
  readonly framesSeen: number;
  readonly timeS: number;
  /** Total span of turn seen so far, degrees ≥ 0. */
  readonly coveredDeg: number;
  /** True for each sector of the turn that has passed the sight; index 0 starts at the first picture. */
  readonly coveredSectors: readonly boolean[];
  /** Turn now, degrees clockwise; from the first picture until the mark is seen, then from the mark. */
  readonly turnDeg: number | null;
  readonly markSeen: boolean;
  /** Turning speed now, degrees a second, positive clockwise. */
  readonly turningDegPerS: number;
  /** What that is to the hand and to this camera, which may want it slower; missing while looking. */
  readonly turnSpeed?: TurnSpeed;
  /** Edge height above the line at the sight now, mm. */
  readonly edgeHeightMm: number | null;
  /** True once the turn closes and nothing more is needed, or turning on would bring nothing more. */
  readonly enough: boolean;
  readonly overlay: PictureOverlay | null;
  /** What is followed round the wheel; missing until that can be told. */
  readonly edgeKind?: EdgeKind;
  /** How good the reading would be if the sweep ended now; null or missing until that can be told. */
  readonly soFar?: SweepSoFar | null;
}

/**
 * While a sweep is recorded: what it is worth by now. The ± are half of a 95 % range, run-out and
 * response by formula counted in as in the reading; scale and mark, which are less, come on top. A
 * second turn makes the part of reading and rocking smaller by about √2, the others stay.
 */
export interface SweepSoFar {
  /** ± of the unbalance's amount, g at the weight radius, with the response by formula. */
  readonly amountG95: number;
  /** ± of the heavy spot, degrees; null while any direction is possible. */
  readonly angleDeg95: number | null;
  /** Turn still to go until the sweep closes for certain, degrees ≥ 0, in either sense. */
  readonly turnLeftDeg: number;
  /** Amplitude of rocking and drift over the last seconds, mm at the edge: how steady the wheel is. */
  readonly rockingMm: number;
}

/** What to draw over the picture, in its own pixels; polylines as x0, y0, x1, y1, … */
export interface PictureOverlay {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly linePx: Float32Array;
  readonly edgePx: Float32Array;
  /** Azimuth of each point of the edge, degrees from the sight, decreasing; as `turnDeg` counts. */
  readonly edgeAzimuthDeg?: Float32Array;
  readonly sightPx: { readonly xPx: number; readonly yPx: number };
  readonly markPx: { readonly xPx: number; readonly yPx: number } | null;
  readonly laserColour: 'green' | 'red';
}

export interface SweepResult {
  readonly reading: Reading;
  /** The edge round the wheel and its fit, for drawing; null where nothing could be fitted. */
  readonly trace: SweepTrace | null;
}

export interface SweepTrace {
  /** Wheel angle of each point, degrees in [0, 360), increasing; stand lean, rocking taken out of `heightMm`. */
  readonly wheelAngleDeg: Float32Array;
  readonly heightMm: Float32Array;
  /** Distance of each point from the fitted once-round wave, mm. */
  readonly residualMm: Float32Array;
  readonly fit: {
    readonly offsetMm: number;
    /** Wave coefficients for n = 1..4, mm: Σ cosMm[n−1]·cos nβ + sinMm[n−1]·sin nβ. */
    readonly cosMm: readonly number[];
    readonly sinMm: readonly number[];
  };
  readonly rockingPeriodS: number | null;
  /** Contributions to the unbalance vector's standard error, g at the weight radius, by name. */
  readonly contributionsG: Readonly<Record<string, number>>;
}
