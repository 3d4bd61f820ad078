import type { SightMemory, SweepReader, SweepResult } from '../src/contract/sweep.ts';
import type { FilmRecorder } from './filmRecorder.ts';
import { createNoteKeeper, type NoteKeeper, type NoteTaker } from './noteKeeper.ts';
import type { PictureReport } from './pictureReport.ts';
import { createStillness } from './stillness.ts';
import { createSweepClock } from './sweepClock.ts';
import type { YuvCopier } from './yuvCopier.ts';

/** What became of a picture, or why a stream of them came to its end. */
export type PictureFate = 'taken' | 'picture-changed' | 'camera-frozen' | 'over';
export type StreamEnd = Exclude<PictureFate, 'taken'> | 'stream-ended';

export interface LiveSweep {
  /** Measures one picture; the frame is closed in any case. */
  add(frame: VideoFrame, timeS: number): Promise<PictureFate>;
  /** Gives every picture to the recorder too, from now on. */
  record(recorder: FilmRecorder): void;
  /** Passes on notes of what is measured, from now on. */
  keepNotes(taker: NoteTaker): void;
  /** Takes pictures from a camera's own stream until it ends or the sweep is over. */
  pump(frames: ReadableStream<VideoFrame>): Promise<StreamEnd>;
  /** Pictures that reached the measuring core. */
  picturesTaken(): number;
  /** Takes no more pictures and fits what was seen. */
  finish(): SweepResult;
  /** Camera and edge as the reader knows them by now. */
  sightNow(): SightMemory | null;
  /** Takes no more pictures. */
  stop(): void;
}

export function createLiveSweep(
  reader: SweepReader,
  { copy, report }: { copy: YuvCopier; report: PictureReport },
): LiveSweep {
  let over = false;
  const clock = createSweepClock();
  const stillness = createStillness();
  let size: readonly [number, number] | null = null;
  let taken = 0;
  let stopPump: (() => void) | null = null;
  let recorder: FilmRecorder | null = null;
  let notes: NoteKeeper | null = null;

  const add = async (frame: VideoFrame, timeS: number): Promise<PictureFate> => {
    try {
      if (over) return 'over';
      if (size && (size[0] !== frame.displayWidth || size[1] !== frame.displayHeight)) {
        return 'picture-changed';
      }
      size = [frame.displayWidth, frame.displayHeight];
      const sweepS = clock.sweepTimeS(timeS, performance.now() / 1000);
      // Browsers hand the same picture out twice at times.
      if (sweepS === null) return 'taken';
      recorder?.add(frame, sweepS);
      const picture = await copy(frame, sweepS);
      // Finished while the picture was copied: the fit has been made without it.
      if (over) return 'over';
      if (stillness.isFrozen(picture)) return 'camera-frozen';
      const progress = reader.addFrame(picture);
      taken += 1;
      notes?.afterPicture(sweepS);
      report.progress(progress, null);
      await report.preview(frame, progress.overlay);
      return 'taken';
    } finally {
      frame.close();
    }
  };

  const pump = async (frames: ReadableStream<VideoFrame>): Promise<StreamEnd> => {
    const from = frames.getReader();
    stopPump = () => void from.cancel().catch(() => undefined);
    for (;;) {
      const { done, value } = await from.read();
      if (done) return over ? 'over' : 'stream-ended';
      const fate = await add(value, value.timestamp / 1e6);
      if (fate === 'taken') continue;
      stopPump();
      return fate;
    }
  };

  const stop = () => {
    over = true;
    stopPump?.();
  };
  return {
    add,
    record(next) {
      recorder = next;
    },
    keepNotes(taker) {
      notes = createNoteKeeper(reader, taker);
    },
    pump,
    picturesTaken: () => taken,
    finish() {
      stop();
      // Before the fit: should that break, the sweep is there to its end.
      notes?.end();
      return reader.finish();
    },
    sightNow: () => reader.sightNow(),
    stop,
  };
}
