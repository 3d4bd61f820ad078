import type { EdgeKind } from '../../contract/followedEdge.ts';
import type { SweepProgress, SweepReaderOptions, SweepSoFar } from '../../contract/sweep.ts';
import { SECTOR_COUNT, SECTOR_DEG } from '../../contract/sweep.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import { turnSpeedOf, type TurnSpeed } from '../../contract/turnSpeed.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import {
  addToRunningTilt,
  createRunningTilt,
  runningTiltNow,
  type RunningTilt,
} from '../fit/runningTilt.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import { riseAt } from '../edge/leanFit.ts';
import {
  absoluteLean,
  treadEdgeMm,
  type FrameRecord,
  type SweepRecording,
} from './sweepRecording.ts';
import { dueSense } from './dueSense.ts';
import { edgeNow } from './followedEdge.ts';
import { coveredDeg, senseOf } from './sweepChecks.ts';
import { markOf } from './solvedSweep.ts';
import { pictureOverlay } from './pictureOverlay.ts';
import { sightBlock, type WheelView } from './wheelView.ts';
import { errorsNow, worthNow, type ErrorsNow } from './worthNow.ts';

/** What is told after each picture of a running sweep. */
export interface ProgressKeeper {
  readonly sectors: boolean[];
  /** Turn of the picture before, null when it was not known. */
  passedDeg: number | null;
  /** Wheel angle of the mark, counted from the first picture's turn; null until it was seen. */
  markDeg: number | null;
  framesUntilMarkCheck: number;
  /** Raw turn at which the mark was last looked for with success. */
  markFoundAtDeg: number;
  /** True degrees in a raw one; 1 where no turn has closed before this camera. */
  readonly turnScale: number;
  /** Looks for the mark again after each further turn, so that no error of scale adds up. */
  readonly marksAgain: boolean;
  readonly running: RunningTilt;
  /** Time of the next picture at which it is told what is followed, s. */
  nextEdgeCheckS: number;
  /** What is followed; null until enough pictures tell. */
  edgeKind: EdgeKind | null;
  /** What the ± takes in beside the sweep's own scatter; null until that is known. */
  errors: ErrorsNow | null;
  /** Of which edge that is told. */
  errorsOf: EdgeProposal | null;
  readonly options: SweepReaderOptions;
}

/** Looking for the tape costs a few milliseconds: once in so many pictures, until it is found. */
const MARK_CHECK_EVERY = 24;
/**
 * What is followed shows in the first half second, and seldom turns out to be something else. Telling it
 * costs as much as measuring a picture, so it goes by time: of more pictures a second no more are held up.
 */
const EDGE_CHECK_EVERY_S = 1;
const FIRST_EDGE_CHECK_PICTURES = 16;
/** A turn and this much more closes it for certain: the raw turn is some per cent off before closing. */
const ENOUGH_DEG = 385;
/** Two turns and the same: a tape that has not been found by then will not be found by turning on. */
const NO_TAPE_DEG = 745;
/** A line seen in less than this share of its columns is lost for the moment. */
const LINE_SHARE_NOW = 0.06;
/** Pictures over which their spacing is told: cameras and films may skip one. */
const STEP_PICTURES = 8;
/** A hand that sets the wheel going may swing it back by less than this first, degrees. */
const SENSE_SURE_DEG = 25;

export function createProgressKeeper(options: SweepReaderOptions = {}): ProgressKeeper {
  return {
    sectors: new Array<boolean>(SECTOR_COUNT).fill(false),
    passedDeg: null,
    markDeg: null,
    framesUntilMarkCheck: MARK_CHECK_EVERY,
    markFoundAtDeg: 0,
    turnScale: options.sameCamera?.sight.turnScale ?? 1,
    marksAgain: options.followOnly ?? false,
    running: createRunningTilt(),
    nextEdgeCheckS: -Infinity,
    edgeKind: null,
    errors: null,
    errorsOf: null,
    options,
  };
}

export function lookingProgress(
  framesSeen: number,
  timeS: number,
  trouble: RefusalCode | null,
): SweepProgress {
  return {
    stage: 'looking',
    trouble,
    framesSeen,
    timeS,
    coveredDeg: 0,
    coveredSectors: new Array<boolean>(SECTOR_COUNT).fill(false),
    turnDeg: null,
    markSeen: false,
    turningDegPerS: 0,
    edgeHeightMm: null,
    enough: false,
    overlay: null,
  };
}

export function followingProgress(
  recording: SweepRecording,
  keeper: ProgressKeeper,
  framesSeen: number,
): SweepProgress {
  const { frames, turn, view } = recording;
  const frame = frames[frames.length - 1];
  const rawTurnDeg = frame.turnIndex === null ? null : turn.turnDeg[frame.turnIndex];
  passSectors(keeper, rawTurnDeg);
  checkMark(recording, keeper, rawTurnDeg);
  if (frames.length >= FIRST_EDGE_CHECK_PICTURES && frame.timeS >= keeper.nextEdgeCheckS) {
    keeper.nextEdgeCheckS = frame.timeS + EDGE_CHECK_EVERY_S;
    const { kind, onBandAlone } = edgeNow(recording);
    keeper.edgeKind = kind;
    // An outline's take long to work out and hang on nothing that is still to come.
    if (kind !== 'outline' || keeper.errorsOf !== recording.edge) {
      keeper.errors = errorsNow(recording, kind, onBandAlone);
      keeper.errorsOf = recording.edge;
    }
  }
  const turnSpeed = turnSpeedOf(turn.rateDegPerS, pictureStepS(recording));
  const lost = troubleNow(frame, turnSpeed);
  const trouble = lost ?? (turnsOtherWay(recording, keeper.options) ? 'picture-mirrored' : null);
  const covered = coveredDeg(turn.turnDeg);
  const lean = absoluteLean(recording, recording.tilt.last);
  return {
    stage: lost ? 'lost' : 'following',
    trouble,
    framesSeen,
    timeS: frame.timeS,
    coveredDeg: covered,
    coveredSectors: [...keeper.sectors],
    turnDeg: rawTurnDeg === null ? null : turnAtSightDeg(keeper, view, rawTurnDeg),
    markSeen: keeper.markDeg !== null,
    turningDegPerS: turn.rateDegPerS,
    turnSpeed,
    edgeHeightMm: frame.lean
      ? treadEdgeMm(recording) + riseAt(view.basis, lean, sightBlock(view))
      : null,
    enough: covered >= (keeper.markDeg === null ? NO_TAPE_DEG : ENOUGH_DEG),
    overlay: pictureOverlay(
      recording,
      keeper.markDeg === null || rawTurnDeg === null ? null : turnNowDeg(keeper, rawTurnDeg),
    ),
    ...(keeper.edgeKind === null ? {} : { edgeKind: keeper.edgeKind }),
    soFar: soFarNow(recording, keeper, rawTurnDeg, covered),
  };
}

/** Pictures that are dropped leave steps of this size; what lies within one has passed too, degrees. */
const LONGEST_STEP_DEG = 3 * SECTOR_DEG;

/** Marks what passed the sight between the picture before and this one. */
function passSectors(keeper: ProgressKeeper, rawTurnDeg: number | null): void {
  const before = keeper.passedDeg;
  keeper.passedDeg = rawTurnDeg;
  if (rawTurnDeg === null) return;
  const isStep = before !== null && Math.abs(rawTurnDeg - before) <= LONGEST_STEP_DEG;
  const first = Math.floor((isStep ? Math.min(before, rawTurnDeg) : rawTurnDeg) / SECTOR_DEG);
  const last = Math.floor((isStep ? Math.max(before, rawTurnDeg) : rawTurnDeg) / SECTOR_DEG);
  for (let at = first; at <= last; at++) {
    keeper.sectors[((at % SECTOR_COUNT) + SECTOR_COUNT) % SECTOR_COUNT] = true;
  }
}

function soFarNow(
  recording: SweepRecording,
  keeper: ProgressKeeper,
  rawTurnDeg: number | null,
  covered: number,
): SweepSoFar | null {
  const { wheel } = recording.view.setup;
  const frame = recording.frames[recording.frames.length - 1];
  if (frame.lean && rawTurnDeg !== null) {
    const { toward, across } = frame.lean.lean;
    const tiltMm = { along0: toward * wheel.edgeRadiusMm, along90: across * wheel.edgeRadiusMm };
    addToRunningTilt(keeper.running, frame.timeS, rawTurnDeg, tiltMm);
  }
  const now = runningTiltNow(keeper.running);
  const worth = now && keeper.errors && worthNow(recording, now, keeper.errors);
  if (!worth) return null;
  const { angleDeg } = worth.ci95;
  return {
    amountG95: (worth.ci95.amount[1] - worth.amountGmm) / wheel.weightRadiusMm,
    angleDeg95: angleDeg && wrapTurnDeg(angleDeg[1] - angleDeg[0]) / 2,
    turnLeftDeg: Math.max(0, ENOUGH_DEG - covered),
    rockingMm: now.rockingMm,
  };
}

function troubleNow(frame: FrameRecord, turnSpeed: TurnSpeed): RefusalCode | null {
  if (frame.lean === null) return 'view-blocked';
  // Lost at speed: the tread smears, or steps by more than half its pitch.
  if (frame.turnIndex === null) return turnSpeed === 'fast' ? 'too-fast' : 'turn-uncertain';
  return frame.lineShare < LINE_SHARE_NOW ? 'line-lost' : null;
}

/** Time between the last pictures, s. */
function pictureStepS({ frames }: SweepRecording): number {
  const last = frames.length - 1;
  const first = Math.max(0, last - STEP_PICTURES);
  return last > first ? (frames[last].timeS - frames[first].timeS) / (last - first) : 0;
}

/** Whether the wheel is by now turned the other way than is due: better said at once than at the end. */
function turnsOtherWay(
  { turn: { turnDeg }, view: { setup } }: SweepRecording,
  options: SweepReaderOptions,
): boolean {
  const due = dueSense(setup, options);
  const turnedDeg = turnDeg.length > 0 ? turnDeg[turnDeg.length - 1] - turnDeg[0] : 0;
  if (due === null || Math.abs(turnedDeg) < SENSE_SURE_DEG) return false;
  return due !== senseOf(turnDeg);
}

function checkMark(
  recording: SweepRecording,
  keeper: ProgressKeeper,
  rawTurnDeg: number | null,
): void {
  if (rawTurnDeg === null) return;
  const isDue =
    keeper.markDeg === null ||
    (keeper.marksAgain && Math.abs(rawTurnDeg - keeper.markFoundAtDeg) > 360);
  if (!isDue || --keeper.framesUntilMarkCheck > 0) return;
  keeper.framesUntilMarkCheck = MARK_CHECK_EVERY;
  const mark = markOf(recording, { scale: keeper.turnScale });
  if (!mark.ok) return;
  keeper.markDeg = mark.value.middleDeg;
  keeper.markFoundAtDeg = rawTurnDeg;
}

/** Turn since the mark stood at the sight; since the first picture until the mark was seen. */
function turnNowDeg(keeper: ProgressKeeper, rawTurnDeg: number): number {
  return rawTurnDeg * keeper.turnScale + (keeper.markDeg ?? 0);
}

/** The same, 0 with the mark at the sight itself where that lies aside of azimuth 0. */
function turnAtSightDeg(keeper: ProgressKeeper, view: WheelView, rawTurnDeg: number): number {
  const asideDeg = keeper.markDeg === null ? 0 : view.sight.asideDeg;
  return turnNowDeg(keeper, rawTurnDeg) - asideDeg;
}
