import type { YuvPicture } from '../../contract/picture.ts';
import type { SweepReaderOptions } from '../../contract/sweep.ts';
import { FIRST_LOOK_POINT_SD_PX, poseLead } from '../geometry/poseFromLine.ts';
import type { Pace } from '../pace/pace.ts';
import type { EdgeTrouble } from '../edge/edgeProposal.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import type { PictureRegion } from '../laser/cellGrid.ts';
import { pooledLine, regionOfPool } from '../sight/linePool.ts';
import {
  knownOfCamera,
  poolMore,
  sightOfPool,
  type Sight,
  type TurnedSoFar,
  type SightFinder,
} from '../sight/sightFinder.ts';
import {
  createKeptPictures,
  FIRST_PICTURES,
  keepOnly,
  keepPicture,
  makeRoom,
  type KeptPictures,
} from './keptPictures.ts';
import { recordingByLaterEdge } from './laterEdge.ts';
import { isBent, WORTH_LITTLE, type MadeAnew } from './secondLook.ts';
import { coveredDeg } from './sweepChecks.ts';
import { recordPicture, startRecording, type SweepRecording } from './sweepRecording.ts';
import { turnedSoFar } from './textureSpans.ts';
import { createWheelView, type WheelView } from './wheelView.ts';

/**
 * The first third of a sweep, in which the view is open to doubt. A first look is taken from a wheel
 * at rest: part of the line may lie in a groove then, and from above that makes a curve as smooth as
 * the face's. As the wheel turns and leans, nearly every column shows the face at some time. So the
 * line is pooled on, pictures are kept, and when the pooled line says another camera the recording
 * is made anew from them: at once in a film, a few with each picture that comes from a camera.
 */
export interface OpenRecording {
  readonly finder: SightFinder;
  readonly kept: KeptPictures;
  recording: SweepRecording | null;
  /** Where the line is pooled on once a view has begun; undefined: in the whole picture. */
  lineRegion: PictureRegion | undefined;
  /** How many of the kept pictures the recording has taken. */
  taken: number;
  /** Spacing of the kept pictures in time while looking, and in turn afterwards; doubled to make room. */
  keepEveryS: number;
  keepEveryDeg: number;
  /** Turn at which the last kept picture stood, and at which the view is held against the line next. */
  keptAtDeg: number;
  checkAtDeg: number;
  /** True once the view stands for good, and nothing is kept any more. */
  settled: boolean;
  /** Whether the recording was made anew: coarsely from pictures too far apart to stand for all of them. */
  madeAnew: MadeAnew | null;
  /** Whether pictures may be left out, and whether they are: only a better view is still to be learnt. */
  readonly mayLeaveOut: boolean;
  viewOnly: boolean;
  /** Looking for the sight or for a better view, put aside until the next picture; null when idle. */
  work: SlicedWork<void> | null;
}

/** Turn covered between two looks at the pooled line, and at which the view is settled, degrees. */
const CHECK_EVERY_DEG = 30;
const SETTLED_DEG = 125;
/** Kept pictures stand so far apart in turn: the tread is followed over twice as much. */
const KEEP_EVERY_DEG = 1.3;
const KEEP_EVERY_S = 0.08;
/** The line is searched for, wherever it can lie, so often, s. */
const POOL_EVERY_S = 0.25;
/** Log-likelihood by which another camera must explain the pooled line better: twenty to one. */
const LEAD = 3;

export function createOpenRecording(
  finder: SightFinder,
  { mayLeaveOut = false, keptBytes }: Pick<SweepReaderOptions, 'mayLeaveOut' | 'keptBytes'> = {},
): OpenRecording {
  return {
    ...{ finder, kept: createKeptPictures(keptBytes), recording: null, taken: 0 },
    ...{ keepEveryS: KEEP_EVERY_S, keepEveryDeg: KEEP_EVERY_DEG, keptAtDeg: 0 },
    ...{ checkAtDeg: CHECK_EVERY_DEG, settled: false, madeAnew: null },
    ...{ lineRegion: undefined, work: null, mayLeaveOut, viewOnly: false },
  };
}

/** While line and edge are being looked for: the picture is kept. */
export function keepWhileLooking(open: OpenRecording, picture: YuvPicture): void {
  const { pictures } = open.kept;
  if (picture.timeS - (pictures[pictures.length - 1]?.timeS ?? -Infinity) < open.keepEveryS) return;
  keepPicture(open.kept, picture);
  if (makeRoom(open.kept)) open.keepEveryS *= 2;
}

/** Does so many steps of what was put aside; what was recorded on the way is caught up with. */
export function workOn(open: OpenRecording, pace: Pace): void {
  if (!open.work) return;
  for (let n = 0; n < pace.steps; n++) {
    if (!open.work.next().done) continue;
    open.work = null;
    catchUp(open, pace.again);
    return;
  }
}

/** Starts with the first view of the wheel; what is wrong with the edge in it, or null. */
export function* recordFirst(open: OpenRecording, sight: Sight): SlicedWork<EdgeTrouble | null> {
  const view = createWheelView(open.finder.setup, sight, open.kept.pictures[0].yStride);
  yield;
  return yield* recordWith(open, view);
}

/** Starts, or starts anew, with a view of the wheel; what is wrong with the edge in it, or null. */
function* recordWith(open: OpenRecording, view: WheelView): SlicedWork<EdgeTrouble | null> {
  const started = yield* startRecording(view, open.kept.pictures.slice(0, FIRST_PICTURES));
  if (started.ok) open.recording = started.value;
  else {
    const { code } = started.failure;
    const later =
      code === 'edge-lost' ? yield* recordingByLaterEdge(view, open.kept.pictures) : null;
    if (!later) return code;
    open.recording = later;
  }
  // Read again a film may be, whether for this or for what the end shows.
  if (open.mayLeaveOut) open.recording.lineWatch.kept = new Map();
  open.lineRegion = regionOfPool(open.finder.pool);
  open.taken = 0;
  return null;
}

/** Begins with a camera known from before: the kept pictures are taken in, and nothing is open. */
export function beginSettled(open: OpenRecording, recording: SweepRecording): void {
  open.recording = recording;
  open.taken = 0;
  open.settled = true;
}

function letKeptGo(open: OpenRecording): void {
  keepOnly(open.kept, () => false);
  open.taken = 0;
}

/** True when all pictures kept so far have been recorded. */
export function isCaughtUp(open: OpenRecording): boolean {
  return open.taken >= open.kept.pictures.length;
}

/** Takes one picture of a recording that has begun. */
export function takePicture(open: OpenRecording, picture: YuvPicture, pace: Pace): void {
  const { recording } = open;
  if (!recording) throw new Error('takePicture: the recording has not begun');
  if (!open.settled) poolMore(open.finder, picture, POOL_EVERY_S, open.lineRegion);
  if (!isCaughtUp(open)) {
    keepPicture(open.kept, picture);
    catchUp(open, pace.again);
    return;
  }
  const taken = recordPicture(recording, picture);
  if (open.settled || !taken) return;
  const { turnIndex } = taken;
  const turnDeg = turnIndex === null ? open.keptAtDeg : recording.turn.turnDeg[turnIndex];
  if (Math.abs(turnDeg - open.keptAtDeg) >= open.keepEveryDeg) {
    keepPicture(open.kept, picture);
    if (makeRoom(open.kept)) open.keepEveryDeg *= 2;
    open.taken = open.kept.pictures.length;
    open.keptAtDeg = turnDeg;
  }
  holdAgainstLine(open, recording);
}

/** Records up to so many of the kept pictures. */
export function catchUp(open: OpenRecording, atMost: number): void {
  const { recording, kept } = open;
  if (!recording || isCaughtUp(open)) return;
  for (let n = 0; n < atMost && !isCaughtUp(open); n++) {
    recordPicture(recording, kept.pictures[open.taken++]);
  }
  if (!isCaughtUp(open)) return;
  if (open.settled) letKeptGo(open);
  else thinByTurn(open, recording);
}

/** Of pictures taken from a wheel at rest, or as fast as they came, only every degree or so is kept. */
function thinByTurn(open: OpenRecording, recording: SweepRecording): void {
  const { turn } = recording;
  const { pictures } = open.kept;
  // By time: a picture that only repeats the one before it has no frame of its own.
  const frameAt = new Map(recording.frames.map((frame) => [frame.timeS, frame]));
  let last = -Infinity;
  keepOnly(open.kept, (i) => {
    const frame = frameAt.get(pictures[i].timeS);
    if (!frame) return i < FIRST_PICTURES;
    const { turnIndex } = frame;
    const turnDeg = turnIndex === null ? last : turn.turnDeg[turnIndex];
    if (i >= FIRST_PICTURES && Math.abs(turnDeg - last) < open.keepEveryDeg) return false;
    last = turnDeg;
    return true;
  });
  open.taken = open.kept.pictures.length;
  open.keptAtDeg = last;
}

function holdAgainstLine(open: OpenRecording, recording: SweepRecording): void {
  const covered = coveredDeg(recording.turn.turnDeg);
  if (open.work || covered < open.checkAtDeg) return;
  open.checkAtDeg = covered + CHECK_EVERY_DEG;
  open.work = heldAgainstLine(open, recording, covered);
}

function* heldAgainstLine(
  open: OpenRecording,
  recording: SweepRecording,
  covered: number,
): SlicedWork<void> {
  // Far aside the line leaves the focal length open. Where no edge shows that way, it may by the line alone.
  const ways = recording.view.sight.asideDeg === 0 ? [{}] : [turnedSoFar(recording), {}];
  yield;
  for (const told of ways) {
    const view = yield* clearlyBetter(open, recording, told);
    if (!view) break;
    if ((yield* recordWith(open, view)) !== null) continue;
    const isCoarse = open.madeAnew === 'coarsely' || open.keepEveryDeg > KEEP_EVERY_DEG;
    open.madeAnew = isCoarse ? 'coarsely' : 'closely';
    // Then read again it will be (secondLook); an outline is followed but once.
    open.viewOnly = isCoarse && open.mayLeaveOut && !open.recording?.edge.outline;
    return;
  }
  if (covered < SETTLED_DEG) return;
  open.settled = true;
  letKeptGo(open);
}

/** What the pooled line's own camera sees, when it explains the line so much better that pictures are worth measuring again. */
function* clearlyBetter(
  open: OpenRecording,
  recording: SweepRecording,
  turned: TurnedSoFar,
): SlicedWork<WheelView | null> {
  const { finder } = open;
  const { setup, sight, band } = recording.view;
  const { points } = pooledLine(finder.pool);
  const look = { ...finder.pool, pointSdPx: FIRST_LOOK_POINT_SD_PX, ...turned };
  const pooled = yield* sightOfPool(finder, turned);
  if (!pooled.ok) return null;
  const known = knownOfCamera(setup, look);
  if (poseLead(points, pooled.value.camera.pose, sight.camera.pose, known) < LEAD) return null;
  const view = createWheelView(setup, pooled.value, band.tables.yStride);
  yield;
  return isBent(recording.view, view, WORTH_LITTLE) ? view : null;
}
