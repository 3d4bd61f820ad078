import type { Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { KnownCamera, SweepReaderOptions, SweepResult } from '../../contract/sweep.ts';
import { AT_ONCE } from '../pace/pace.ts';
import { createLightMeter, type LightMeter } from '../sight/lightMeter.ts';
import { createSightFinder, type SightFinder } from '../sight/sightFinder.ts';
import { catchUp, createOpenRecording, workOn, type OpenRecording } from './openRecording.ts';
import { solveGeometry, type SolvedGeometry } from './solvedSweep.ts';
import type { FrameRecord, SweepRecording } from './sweepRecording.ts';

/** What a reader of one sweep knows by now. */
export interface ReaderState {
  readonly setup: SweepSetup;
  readonly options: SweepReaderOptions;
  readonly finder: SightFinder;
  readonly light: LightMeter;
  open: OpenRecording;
  /** Why nothing is recorded yet. */
  trouble: RefusalCode | null;
  framesSeen: number;
  /** Times of the first picture, of the last one, and of the last in which no line was found yet. */
  firstS: number;
  lastS: number;
  withoutLineUntilS: number;
  /** Size and stride of the pictures. */
  size: string;
  /** A camera that its first pictures are still to be held against. */
  known: KnownCamera | null;
  solved: SolvedOnce | null;
}

interface SolvedOnce {
  readonly recording: SweepRecording;
  /** The newest frame it was solved with. */
  readonly last: FrameRecord | undefined;
  readonly geometry: Outcome<SolvedGeometry, RefusalCode>;
  /** Null until it is asked for. */
  result: SweepResult | null;
}

export function createReaderState(setup: SweepSetup, options: SweepReaderOptions): ReaderState {
  const finder = createSightFinder(setup);
  return {
    ...{ setup, options, finder, light: createLightMeter() },
    open: createOpenRecording(finder, options),
    ...{ trouble: null, framesSeen: 0, size: '', solved: null },
    ...{ firstS: NaN, lastS: -Infinity, withoutLineUntilS: NaN },
    known: options.sameCamera ?? null,
  };
}

/** Another size is another camera to all that was found; what is kept cannot be mixed. */
export function mindSize(state: ReaderState, picture: YuvPicture): void {
  const size = `${picture.widthPx}×${picture.heightPx}×${picture.yStride}`;
  if (size === state.size) return;
  state.size = size;
  state.open = createOpenRecording(state.finder, state.options);
  state.known = state.options.sameCamera ?? null;
  state.solved = null;
}

/** What is recorded, the kept pictures taken in. */
export function wholeRecording({ open }: ReaderState): SweepRecording | null {
  workOn(open, AT_ONCE);
  catchUp(open, AT_ONCE.again);
  return open.recording;
}

/** Solved once for the pictures so far: result and second look both ask. */
export function geometryOf(
  state: ReaderState,
  recording: SweepRecording,
): Outcome<SolvedGeometry, RefusalCode> {
  const known = geometryKnown(state, recording);
  if (known) return known;
  const geometry = solveGeometry(recording);
  state.solved = { recording, last: recording.frames.at(-1), geometry, result: null };
  return geometry;
}

/** What came of the pictures so far, worked out once: a film's second look asks before its end does. */
export function resultOf(
  state: ReaderState,
  recording: SweepRecording,
  make: (geometry: Outcome<SolvedGeometry, RefusalCode>) => SweepResult,
): SweepResult {
  const geometry = geometryOf(state, recording);
  const solved = state.solved!;
  return (solved.result ??= make(geometry));
}

/** The same where it has been solved; null where it has not been with all pictures so far. */
export function geometryKnown(
  { solved }: ReaderState,
  recording: SweepRecording,
): Outcome<SolvedGeometry, RefusalCode> | null {
  const isOfAll = solved?.recording === recording && solved.last === recording.frames.at(-1);
  return isOfAll && solved ? solved.geometry : null;
}
