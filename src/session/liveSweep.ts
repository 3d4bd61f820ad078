import { noticeFor, type Notice } from '../contract/notice.ts';
import { NO_ERRAND, type CameraOptions, type SightChange } from '../contract/session.ts';
import type { SightTests, SweepSetup } from '../contract/setup.ts';
import type { KnownCamera } from '../contract/sweep.ts';
import { closeCameraStream, openLiveStream } from './cameraStream.ts';
import { earlierReadingFor } from './earlierReading.ts';
import type { LiveFilm } from './films/liveFilm.ts';
import {
  runStretch,
  stretchAfter,
  type LiveCamera,
  type LiveEnd,
  type LiveTools,
  type Stretch,
  type WantedSight,
} from './liveStretch.ts';
import type { SweepRun } from './sessionStore.ts';
import type { SightKeeper } from './sightKeeper.ts';
import { withTests } from './signKeeper.ts';

export interface LiveSweepRun {
  /** Resolves when the sweep has been read or has failed. */
  readonly done: Promise<void>;
  /** Goes on sighting with another setup. */
  changeSight(setup: SweepSetup, change: SightChange, assumed?: readonly string[]): void;
  /** Writes the trials by hand into the setup, without a new start. */
  noteTests(tests: SightTests): void;
  /** From sighting to sweeping, on the same stream. */
  beginSweep(): void;
  /** Takes no more pictures and reads what there is. */
  finish(): void;
  /** Lets go of the camera; the run must have been made void. */
  abandon(): void;
}

export interface LiveAsk extends CameraOptions {
  readonly setup: SweepSetup;
  /** Follows the wheel without a reading until `beginSweep`. */
  readonly sightFirst: boolean;
}

/**
 * Runs a live camera: sighting first when asked, then sweeping until the turn is closed, the
 * person ends it, or something breaks. Each stretch has a reader of its own on the same stream.
 */
export function runLiveSweep(run: SweepRun, tools: LiveTools, ask: LiveAsk): LiveSweepRun {
  let end: (why: LiveEnd) => void = () => undefined;
  let asked = new Promise<LiveEnd>((resolve) => (end = resolve));
  let wanted: WantedSight | null = null;
  let setupNow = ask.setup;
  let tests: SightTests = {};
  let phase: 'sighting' | 'sweeping' = ask.sightFirst ? 'sighting' : 'sweeping';
  let stream: MediaStream | null = null;
  const letGo = () => {
    if (stream) closeCameraStream(stream);
  };

  const sweep = async (): Promise<void> => {
    const earlier = earlierReadingFor(ask.setup, ask.earlier ?? null);
    if (!earlier.ok) return run.fail(earlier.failure.code, earlier.failure.evidence);
    const opened = await openLiveStream(ask);
    if (!opened.ok) return run.fail(opened.failure.code, opened.failure.evidence);
    stream = opened.value;
    await ask.prepare?.(stream);
    if (!run.isCurrent()) return letGo();
    const source = ask.source?.kind ?? 'camera';
    tests = tools.signs.for(stream, ask.tested ?? null);
    let camera = {
      ...{ stream, source, feed: ask.source?.feed ?? null },
      ...{ errand: ask.errand ?? NO_ERRAND, earlier: earlier.value },
    };
    let stretch: Stretch = {
      phase,
      setup: withTests(ask.setup, tests),
      known: knownCamera(tools.known, ask.setup),
      notice: null,
      crashes: 0,
    };
    for (;;) {
      setupNow = stretch.setup;
      const ran = await runStretch(run, tools, camera, stretch, asked, end);
      const { why, progress, film } = ran;
      if (!run.isCurrent()) {
        void film?.end('stopped');
        return letGo();
      }
      asked = new Promise<LiveEnd>((resolve) => (end = resolve));
      const next = await stretchAfter(why, stretch, { tools, progress, wanted });
      if (next !== 'read' || !run.isCurrent()) void film?.end();
      if (!run.isCurrent()) return letGo();
      if (next === 'read') {
        return readWhatWasSeen(run, tools, camera, { ...stretch, film, notice: endNotice(why) });
      }
      if (typeof next === 'string') return run.fail(next);
      // Seen otherwise, the picture may stand otherwise too.
      if (why === 'picture-changed' || why === 'lens-changed') {
        tests = {};
        tools.signs.keep(stream, tests);
      }
      if (why === 'change-sight' && wanted?.assumed) {
        camera = { ...camera, errand: { ...camera.errand, assumed: wanted.assumed } };
      }
      stretch = { ...next, setup: withTests(next.setup, tests) };
      phase = stretch.phase;
    }
  };

  return {
    done: sweep().finally(letGo),
    changeSight(setup, change, assumed) {
      if (phase !== 'sighting') return;
      wanted = { setup, change, assumed };
      end('change-sight');
    },
    noteTests(next) {
      if (phase !== 'sighting' || stream === null) return;
      tests = next;
      tools.signs.keep(stream, next);
      run.updateSight({ setup: withTests(setupNow, next) });
    },
    beginSweep() {
      if (phase === 'sighting') end('begin-sweep');
    },
    finish() {
      if (phase === 'sweeping') end('over');
    },
    abandon: letGo,
  };
}

async function readWhatWasSeen(
  run: SweepRun,
  { worker, known }: LiveTools,
  { source, errand }: LiveCamera,
  { setup, film, notice }: Pick<Stretch, 'setup' | 'notice'> & { readonly film: LiveFilm | null },
): Promise<void> {
  const [finished, filmed] = await Promise.all([worker.finishLive(), film?.end() ?? null]);
  if (!run.isCurrent()) return;
  if (!finished.ok) return run.fail('worker-failed', finished.failure.evidence);
  if (!finished.value) return run.fail('worker-failed', { sweep: 'none was running' });
  const { result, sight } = finished.value;
  known.keep(setup, sight);
  const { filmId = null, canRecord = true } = filmed ?? {};
  run.showRead({
    source,
    errand,
    setup,
    result,
    notice: notice ?? (canRecord ? null : noticeFor('film-not-kept')),
    ...(filmId === null ? {} : { filmId }),
    ...(film ? { sweepId: film.sweepId } : {}),
  });
}

function endNotice(why: LiveEnd): Notice | null {
  switch (why) {
    case 'camera-silent':
    case 'camera-unplugged':
    case 'camera-frozen':
    case 'picture-changed':
    case 'lens-changed':
      return noticeFor(why);
    default:
      return null;
  }
}

function knownCamera(keeper: SightKeeper, setup: SweepSetup): KnownCamera | null {
  const sight = keeper.for(setup);
  return sight && { sight, edgeKnown: setup.sight.edgePoint === undefined };
}
