import type { KeptSightTests } from './logbook.ts';
import type { Notice } from './notice.ts';
import type { Reading } from './reading.ts';
import type { SightTests, SweepSetup } from './setup.ts';
import type { PictureOverlay, SweepProgress, SweepResult } from './sweep.ts';

/** What the screens see of a running session, and all that they may ask of it. */

export type SourceKind = 'sample' | 'file' | 'camera' | 'practice';
export type LiveSourceKind = Extract<SourceKind, 'camera' | 'practice'>;

/** For which wheel of the logbook a sweep is made, and which of its setup's values were assumed. */
export interface SweepErrand {
  /** Null: the wheel is found or made from the setup when the reading is kept. */
  readonly wheelId: string | null;
  /** Paths in the setup, as `wheel.massKg`. */
  readonly assumed: readonly string[];
  /** The record of the shelf that is read, whether it has a film, and when its sweep was made. */
  readonly film?: { readonly filmId: string; readonly sweptAt: string; readonly isNotes?: boolean };
}

export const NO_ERRAND: SweepErrand = { wheelId: null, assumed: [] };

export type SessionState =
  | { readonly phase: 'choosing'; readonly problem: Notice | null }
  | {
      /** A live camera that is followed without a reading: to aim it, or to lead the hand. */
      readonly phase: 'sighting';
      readonly source: LiveSourceKind;
      readonly errand: SweepErrand;
      readonly setup: SweepSetup;
      readonly progress: SweepProgress | null;
      readonly stream: MediaStream;
      readonly framesDropped: number;
      /** Something that happened and needs nothing but to be known (the lens was changed). */
      readonly notice: Notice | null;
    }
  | {
      readonly phase: 'sweeping';
      readonly source: SourceKind;
      readonly errand: SweepErrand;
      readonly setup: SweepSetup;
      readonly progress: SweepProgress | null;
      /** Share of the file read so far, 0 to 1; null for a camera. */
      readonly fraction: number | null;
      /** 2 while a film is read once more with what its first pass taught; `fraction` then starts again. */
      readonly pass?: 1 | 2;
      /** The camera's own stream, shown in a video element; for files the preview arrives by `onPreview`. */
      readonly stream: MediaStream | null;
      readonly framesDropped: number;
      /** Something to say while the sweep goes on (the worker was restarted). */
      readonly notice: Notice | null;
    }
  | {
      readonly phase: 'read';
      readonly source: SourceKind;
      readonly errand: SweepErrand;
      readonly setup: SweepSetup;
      readonly result: SweepResult;
      /** The film that was recorded of this live sweep. */
      readonly filmId?: string;
      /** Its record on the shelf, which has done its work once the reading is kept. */
      readonly sweepId?: string;
      /** Set when the sweep ended otherwise than by itself (camera unplugged, worker restarted). */
      readonly notice: Notice | null;
    };

/** A live camera followed without an end: what sight and leading the hand show. */
export type SightingState = Extract<SessionState, { phase: 'sighting' }>;

export interface SweepFiles {
  readonly film: File;
  readonly setup: SweepSetup;
  /** A reading of the sweep before this one, for a check sweep. */
  readonly earlier: Reading | null;
}

/** What is left of a live sweep that broke off before its reading. */
export interface BrokenOffSweep {
  readonly notes: Blob | null;
  readonly film: File | null;
  readonly setup: SweepSetup;
  readonly earlier: Reading | null;
  readonly errand: SweepErrand;
}

/** Live pictures from elsewhere than the browser's own cameras. */
export interface LiveSource {
  readonly kind: LiveSourceKind;
  /** The session stops the stream's tracks when it is done with it. */
  open(): Promise<MediaStream>;
  /** For a source with a clock of its own: its pictures are taken here, and not from the stream. */
  readonly feed?: OwnFeed;
}

/**
 * Gives pictures to `take` until stopped, the next one only once `take` has resolved: a slow machine
 * slows the source's clock, and no picture is lost.
 */
export type OwnFeed = (take: TakePicture) => { stop(): void };

/** Takes a picture, which the taker closes, with its time in seconds; false when no more is wanted. */
export type TakePicture = (picture: VideoFrame | ImageBitmap, timeS: number) => Promise<boolean>;

export interface CameraOptions {
  readonly deviceId?: string;
  /** Taken instead of a camera of the browser. */
  readonly source?: LiveSource;
  /** The reading that a check sweep builds on. */
  readonly earlier?: Reading;
  readonly errand?: SweepErrand;
  /** What was tried by hand on another day; it holds if the camera is the one it was tried before. */
  readonly tested?: KeptSightTests;
  /** Called with the camera once it is open, before its first picture: sets it as it was set before. */
  readonly prepare?: (stream: MediaStream) => Promise<void>;
}

/**
 * A picture to show and what was found in this very picture. The receiver closes `picture`; it is
 * asked for the next one only once its call has returned.
 */
interface ShownPicture {
  readonly picture: ImageBitmap | VideoFrame;
  readonly overlay: PictureOverlay | null;
}

export type ShowPicture = (shown: ShownPicture) => void;

/**
 * What a change of the sight leaves standing: `edge` another edge is chosen, camera and line stay;
 * `view` the camera sees otherwise (zoom, tilt, lens): all is looked for anew.
 */
export type SightChange = 'edge' | 'view';

export interface SweepSession {
  getState(): SessionState;
  /** Calls back after each change; returns the way to stop that. */
  subscribe(onChange: () => void): () => void;
  /** Pictures as they are measured, some of them a second, for showing. */
  onPreview(show: ShowPicture | null): void;
  readSample(): Promise<void>;
  /** Sorts out which of the chosen files is film, setup and earlier reading, checks them and starts. */
  readFiles(files: readonly File[], errand?: SweepErrand): Promise<void>;
  /**
   * Reads a sweep that broke off, as if it had been ended there: by its notes, or where these give
   * no reading by its film.
   */
  takeUp(sweep: BrokenOffSweep): Promise<void>;
  /** Asks for a camera and starts a live sweep. A live sweep ends by itself once `progress.enough`. */
  startCamera(setup: SweepSetup, options?: CameraOptions): Promise<void>;
  /**
   * Asks for a camera and follows the wheel before it, without end and without a reading. When a
   * camera was known from the last sweep and has not moved, its better view is taken up.
   */
  openSight(setup: SweepSetup, options?: CameraOptions): Promise<void>;
  /**
   * While sighting: goes on with another setup, on the same stream. `assumed` takes the place of
   * the errand's where a value was measured meanwhile.
   */
  changeSight(setup: SweepSetup, change: SightChange, assumed?: readonly string[]): void;
  /** While sighting: writes into the setup how the trials by hand came out; the pictures go on. */
  noteTests(tests: SightTests): void;
  /**
   * While sighting: starts the sweep on the same stream, with camera and edge as they were found.
   * The edge goes into the setup, so that a film of this sweep is read at the same edge.
   */
  beginSweep(): void;
  /** Ends a live sweep and reads what was recorded. */
  finishSweep(): Promise<void>;
  /**
   * Lets go of a camera that is aimed, or asked for and not open yet: the place that wanted it is
   * left. A sweep that runs stays.
   */
  leaveCamera(): void;
  /** Stops whatever runs and goes back to choosing. */
  stop(): void;
}

/**
 * What the browser tests and the accuracy command look for in the page; the screens carry them:
 *
 * - `main[data-phase]`: the state's phase; with `data-status` ('ok' | 'refused') in phase 'read';
 * - `input[type=file][multiple][data-role="sweep-files"]`: takes the files of a sweep;
 * - `[data-role="problem"][data-code]` and `[data-role="notice"][data-code]`: a {@link Notice};
 * - `[data-role="read-sample"]`, `[data-role="start-camera"]`, `[data-role="finish-sweep"]`,
 *   `[data-role="stop"]`: the buttons;
 * - `[data-role="download-reading"]`: downloads `reading.json`, also when the reading is a refusal.
 */
export type PageRole =
  | 'sweep-files'
  | 'problem'
  | 'notice'
  | 'read-sample'
  | 'start-camera'
  | 'finish-sweep'
  | 'stop'
  | 'download-reading';
