import { expose, transfer } from 'comlink';

import type { FilmLook } from '../src/contract/filmLook.ts';
import type { AcceptedReading } from '../src/contract/reading.ts';
import type { SweepSetup } from '../src/contract/setup.ts';
import type { SightMemory, SweepReaderOptions, SweepResult } from '../src/contract/sweep.ts';
import { createSweepReader } from '../src/measure/sweepReader.ts';
import {
  createFilmRecorder,
  type FilmRecorder,
  type FilmSummary,
  type FilmTaker,
} from './filmRecorder.ts';
import { readNotes } from '../src/measure/notes/readNotes.ts';
import { createLiveSweep, type LiveSweep, type PictureFate, type StreamEnd } from './liveSweep.ts';
import type { NoteTaker } from './noteKeeper.ts';
import { createLiveReport, createPictureReport, type SweepListener } from './pictureReport.ts';
import { readFilm } from './readFilm.ts';
import { createYuvCopier } from './yuvCopier.ts';

/**
 * What the main thread may call. Listeners come as Comlink proxies: their calls are promises, which
 * nobody waits for.
 *
 * One sweep at a time: each start makes the one before it void.
 */
let sweepNumber = 0;
let live: LiveSweep | null = null;
let recorder: FilmRecorder | null = null;

function beginSweep(): number {
  live?.stop();
  live = null;
  void recorder?.end();
  recorder = null;
  return ++sweepNumber;
}

function toolsFor(proxied: SweepListener, use: 'film' | 'leading' | 'sweeping') {
  const listener: SweepListener = {
    progress: (progress, place) => proxied.progress(progress, place),
    preview: (picture, overlay) => proxied.preview(picture, overlay),
  };
  const moved = <T extends ImageBitmap | VideoFrame>(picture: T) => transfer(picture, [picture]);
  const report =
    use === 'film' ? createPictureReport(listener, moved) : createLiveReport(listener, moved, use);
  // A copier of its own: a sweep that was made void may still be waiting for its last picture.
  return { copy: createYuvCopier(), report };
}

const measuring = {
  /** Answers at once: tells a worker that is busy from one that is gone. */
  ping: (): true => true,

  /** Reads a recorded sweep from its file to its result. */
  async readFilm(
    file: Blob,
    setup: SweepSetup,
    earlier: AcceptedReading | null,
    listener: SweepListener,
  ) {
    const mine = beginSweep();
    const makeReader = (look: FilmLook) =>
      createSweepReader(setup, { ...(earlier ? { earlier } : {}), ...look });
    return readFilm(file, makeReader, {
      ...toolsFor(listener, 'film'),
      stopped: () => mine !== sweepNumber,
    });
  },

  /** Begins a sweep whose pictures come from a camera, by `pumpStream` or one at a time by `addPicture`. */
  startLive(setup: SweepSetup, options: SweepReaderOptions, listener: SweepListener): void {
    beginSweep();
    const reader = createSweepReader(setup, { ...options, live: true });
    const use = options.followOnly ? 'leading' : 'sweeping';
    live = createLiveSweep(reader, toolsFor(listener, use));
  },

  /** Records the live sweep's pictures from now on; its pieces go to `taker` as they are written. */
  recordFilm(taker: FilmTaker): void {
    if (!live) return;
    recorder = createFilmRecorder({ piece: (bytes, type) => taker.piece(bytes, type) });
    live.record(recorder);
  },

  /** Keeps notes of the live sweep from now on; they go to `taker` as they are written. */
  keepNotes(taker: NoteTaker): void {
    live?.keepNotes({ note: (piece) => taker.note(transfer(piece, [piece.bytes.buffer])) });
  },

  /** Reads a sweep that broke off from its notes. */
  async readNotes(
    notes: Blob,
    setup: SweepSetup,
    earlier: AcceptedReading | null,
  ): Promise<SweepResult> {
    beginSweep();
    return readNotes(await notes.arrayBuffer(), setup, earlier ? { earlier } : {});
  },

  /** Ends the film of the live sweep; null when none was being recorded. */
  async endFilm(): Promise<FilmSummary | null> {
    return recorder?.end() ?? null;
  },

  /** Takes pictures from a camera's transferred stream until it ends. */
  async pumpStream(frames: ReadableStream<VideoFrame>): Promise<StreamEnd> {
    return live ? live.pump(frames) : 'over';
  },

  /** Measures one transferred picture. Resolves when the next one may be sent. */
  async addPicture(picture: VideoFrame | ImageBitmap, timeS: number): Promise<PictureFate> {
    const frame = picture instanceof VideoFrame ? picture : frameOf(picture, timeS);
    if (live) return live.add(frame, timeS);
    frame.close();
    return 'over';
  },

  picturesTaken: (): number => live?.picturesTaken() ?? 0,

  /** Camera and edge as the live sweep knows them by now; null when it has not found them. */
  sightNow: (): SightMemory | null => live?.sightNow() ?? null,

  /** Ends the live sweep and fits what was seen; null when none was running. */
  finishLive(): LiveEnd | null {
    if (!live) return null;
    const result = live.finish();
    const end = { result, sight: live.sightNow() };
    live = null;
    return end;
  },

  /** Stops whatever runs; a film that is being read ends with `stopped`. */
  stop(): void {
    beginSweep();
  },
};

function frameOf(bitmap: ImageBitmap, timeS: number): VideoFrame {
  const frame = new VideoFrame(bitmap, { timestamp: Math.round(timeS * 1e6) });
  bitmap.close();
  return frame;
}

/** What a live sweep leaves behind: its reading, and camera and edge for the next one. */
export interface LiveEnd {
  readonly result: SweepResult;
  readonly sight: SightMemory | null;
}

export type Measuring = typeof measuring;

expose(measuring);
