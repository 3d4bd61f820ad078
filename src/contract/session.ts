import type { Reading, Refusal } from './reading.ts';
import type { SweepSetup } from './setup.ts';
import type { SweepProgress, SweepResult } from './sweep.ts';

/** What the screens see of a running session, and all that they may ask of it. */

export type SourceKind = 'sample' | 'file' | 'camera';

export type SessionState =
  | { readonly phase: 'choosing'; readonly problem: Refusal | null }
  | {
      readonly phase: 'sweeping';
      readonly source: SourceKind;
      readonly setup: SweepSetup;
      readonly progress: SweepProgress | null;
      /** Share of the file read so far, 0 to 1; null for a camera. */
      readonly fraction: number | null;
      /** The camera's own stream, shown in a video element; for files the preview arrives by `onPreview`. */
      readonly stream: MediaStream | null;
      readonly framesDropped: number;
    }
  | {
      readonly phase: 'read';
      readonly source: SourceKind;
      readonly setup: SweepSetup;
      readonly result: SweepResult;
      /** Set when the sweep ended otherwise than by itself (camera unplugged, worker restarted). */
      readonly notice: Refusal | null;
    };

export interface SweepFiles {
  readonly film: File;
  readonly setup: SweepSetup;
  /** A reading of the sweep before this one, for a check sweep. */
  readonly earlier: Reading | null;
}

export interface SweepSession {
  getState(): SessionState;
  /** Calls back after each change; returns the way to stop that. */
  subscribe(onChange: () => void): () => void;
  /** Pictures of a file as they are read, a few a second, for showing; the receiver closes them. */
  onPreview(show: ((picture: ImageBitmap) => void) | null): void;
  readSample(): Promise<void>;
  /** Sorts out which of the chosen files is film, setup and earlier reading, checks them and starts. */
  readFiles(files: readonly File[]): Promise<void>;
  /** Asks for a camera and starts a live sweep. */
  startCamera(setup: SweepSetup, deviceId?: string): Promise<void>;
  /** Ends a live sweep and reads what was recorded. */
  finishSweep(): Promise<void>;
  /** Stops whatever runs and goes back to choosing. */
  stop(): void;
}
