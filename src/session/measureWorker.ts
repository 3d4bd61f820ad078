import { proxy, transfer, wrap, type Remote } from 'comlink';

import type { AcceptedReading } from '../contract/reading.ts';
import type { SweepSetup } from '../contract/setup.ts';
import type { SightMemory, SweepReaderOptions, SweepResult } from '../contract/sweep.ts';
import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import type { LiveEnd, Measuring } from '../../workers/measure.worker.ts';
import type { FilmSummary, FilmTaker } from '../../workers/filmRecorder.ts';
import type { NoteTaker } from '../../workers/noteKeeper.ts';
import type { PictureFate, StreamEnd } from '../../workers/liveSweep.ts';
import type { SweepListener } from '../../workers/pictureReport.ts';
import type { FilmRead } from '../../workers/readFilm.ts';
import type { FilmTrouble } from '../../workers/filmFrames.ts';

/** How the measuring worker failed: it died, it does not answer, or a call into it threw. */
export type WorkerFailure = 'worker-crashed';

/**
 * The one place that knows the measuring worker: starts it, watches it, starts a new one when it
 * has died. Every call ends: with its value, or as `worker-crashed` when the worker is gone.
 */
export interface MeasureWorker {
  readFilm(
    film: Blob,
    setup: SweepSetup,
    earlier: AcceptedReading | null,
    listener: SweepListener,
  ): Promise<Outcome<FilmRead, FilmTrouble | 'stopped' | WorkerFailure>>;
  startLive(
    setup: SweepSetup,
    options: SweepReaderOptions,
    listener: SweepListener,
  ): Promise<Outcome<void, WorkerFailure>>;
  /** Keeps notes of the sweep that `startLive` began. */
  keepNotes(taker: NoteTaker): Promise<Outcome<void, WorkerFailure>>;
  readNotes(
    notes: Blob,
    setup: SweepSetup,
    earlier: AcceptedReading | null,
  ): Promise<Outcome<SweepResult, WorkerFailure>>;
  /** Records the sweep that `startLive` began. */
  recordFilm(taker: FilmTaker): Promise<Outcome<void, WorkerFailure>>;
  endFilm(): Promise<Outcome<FilmSummary | null, WorkerFailure>>;
  pumpStream(frames: ReadableStream<VideoFrame>): Promise<Outcome<StreamEnd, WorkerFailure>>;
  addPicture(
    picture: VideoFrame | ImageBitmap,
    timeS: number,
  ): Promise<Outcome<PictureFate, WorkerFailure>>;
  picturesTaken(): Promise<Outcome<number, WorkerFailure>>;
  sightNow(): Promise<Outcome<SightMemory | null, WorkerFailure>>;
  finishLive(): Promise<Outcome<LiveEnd | null, WorkerFailure>>;
  /** Ends a worker that is known to hang; the next call starts another. */
  giveUp(reason: string): void;
  /** Makes void whatever runs. */
  stop(): void;
  /** Ends the worker for good. */
  dispose(): void;
}

/** How often the worker is asked whether it lives. */
const PING_INTERVAL_MS = 2000;
/**
 * A worker that has not answered for so long is given up. The longest thing it does without a
 * pause is the final fit; on a slow tablet that stays well below this.
 */
const SILENCE_LIMIT_MS = 30_000;

interface LivingWorker {
  readonly remote: Remote<Measuring>;
  /** Resolves with the reason once the worker is gone; never rejects. */
  readonly gone: Promise<string>;
  end(reason: string): void;
}

/** `silenceLimitMs` is there for tests. */
export function createMeasureWorker(silenceLimitMs = SILENCE_LIMIT_MS): MeasureWorker {
  let living: LivingWorker | null = null;

  const use = (): LivingWorker => {
    if (living) return living;
    const started = startWorker(silenceLimitMs);
    living = started;
    void started.gone.then(() => {
      if (living === started) living = null;
    });
    return started;
  };

  async function call<T>(
    make: (remote: Remote<Measuring>) => Promise<T>,
  ): Promise<Outcome<T, WorkerFailure>> {
    const worker = use();
    const answer = make(worker.remote).then(
      (value) => succeeded(value),
      (error: unknown) => {
        // A throw inside the core leaves it in an unknown state: the next call gets a fresh worker.
        const reason = error instanceof Error ? error.message : String(error);
        worker.end(reason);
        return failed('worker-crashed', { reason });
      },
    );
    const crash = worker.gone.then((reason) => failed('worker-crashed', { reason }));
    return Promise.race([answer, crash]);
  }

  return {
    async readFilm(film, setup, earlier, listener) {
      const read = await call<Outcome<FilmRead, FilmTrouble | 'stopped'>>((r) =>
        r.readFilm(film, setup, earlier, proxy(listener)),
      );
      return read.ok ? read.value : read;
    },
    startLive: (setup, options, listener) =>
      call((r) => r.startLive(setup, options, proxy(listener))),
    keepNotes: (taker) => call((r) => r.keepNotes(proxy(taker))),
    readNotes: (notes, setup, earlier) => call((r) => r.readNotes(notes, setup, earlier)),
    recordFilm: (taker) => call((r) => r.recordFilm(proxy(taker))),
    endFilm: () => call((r) => r.endFilm()),
    pumpStream: (frames) => call((r) => r.pumpStream(transfer(frames, [frames]))),
    addPicture: (picture, timeS) => call((r) => r.addPicture(transfer(picture, [picture]), timeS)),
    picturesTaken: () => call((r) => r.picturesTaken()),
    sightNow: () => call((r) => r.sightNow()),
    giveUp: (reason) => living?.end(reason),
    finishLive: () => call((r) => r.finishLive()),
    stop() {
      if (living) void call((r) => r.stop());
    },
    dispose() {
      living?.end('disposed');
    },
  };
}

function startWorker(silenceLimitMs: number): LivingWorker {
  const worker = new Worker(new URL('../../workers/measure.worker.ts', import.meta.url), {
    type: 'module',
    name: 'measure',
  });
  // Comlink answers through the proxy only while someone holds it: it lives as long as this object.
  const remote = wrap<Measuring>(worker);
  let timer = 0;
  let end: (reason: string) => void = () => undefined;
  const gone = new Promise<string>((resolve) => {
    end = (reason) => {
      clearInterval(timer);
      worker.terminate();
      resolve(reason);
    };
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    end(event.message || 'the worker could not be loaded');
  });
  worker.addEventListener('messageerror', () => end('a message of the worker could not be read'));
  let askedMs: number | null = null;
  timer = window.setInterval(
    () => {
      if (askedMs !== null) {
        if (performance.now() - askedMs > silenceLimitMs) end('the worker does not answer');
        return;
      }
      askedMs = performance.now();
      void remote.ping().then(() => (askedMs = null));
    },
    Math.min(PING_INTERVAL_MS, silenceLimitMs / 2),
  );
  return { remote, gone, end };
}
