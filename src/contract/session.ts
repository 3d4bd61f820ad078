import type { Notice } from './notice.ts';
import type { Reading } from './reading.ts';
import type { SweepSetup } from './setup.ts';
import type { SweepProgress, SweepResult } from './sweep.ts';

/** What the screens see of a running session, and all that they may ask of it. */

export type SourceKind = 'sample' | 'file' | 'camera' | 'practice';

/** For which wheel of the logbook a sweep is made, and which of its setup's values were assumed. */
export interface SweepErrand {
  /** Null: the wheel is found or made from the setup when the reading is kept. */
  readonly wheelId: string | null;
  /** Paths in the setup, as `wheel.massKg`. */
  readonly assumed: readonly string[];
}

export const NO_ERRAND: SweepErrand = { wheelId: null, assumed: [] };

export type SessionState =
  | { readonly phase: 'choosing'; readonly problem: Notice | null }
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
      /** Set when the sweep ended otherwise than by itself (camera unplugged, worker restarted). */
      readonly notice: Notice | null;
    };

export interface SweepFiles {
  readonly film: File;
  readonly setup: SweepSetup;
  /** A reading of the sweep before this one, for a check sweep. */
  readonly earlier: Reading | null;
}

export interface CameraOptions {
  readonly deviceId?: string;
  /** The reading that a check sweep builds on. */
  readonly earlier?: Reading;
  readonly errand?: SweepErrand;
}

export interface SweepSession {
  getState(): SessionState;
  /** Calls back after each change; returns the way to stop that. */
  subscribe(onChange: () => void): () => void;
  /** Pictures of a file as they are read, a few a second, for showing; the receiver closes them. */
  onPreview(show: ((picture: ImageBitmap) => void) | null): void;
  readSample(): Promise<void>;
  /** Sorts out which of the chosen files is film, setup and earlier reading, checks them and starts. */
  readFiles(files: readonly File[], errand?: SweepErrand): Promise<void>;
  /** Asks for a camera and starts a live sweep. A live sweep ends by itself once `progress.enough`. */
  startCamera(setup: SweepSetup, options?: CameraOptions): Promise<void>;
  /** Ends a live sweep and reads what was recorded. */
  finishSweep(): Promise<void>;
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
