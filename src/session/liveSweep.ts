import { noticeFor, type Notice } from '../contract/notice.ts';
import { NO_ERRAND, type CameraOptions, type SweepErrand } from '../contract/session.ts';
import type { SweepSetup } from '../contract/setup.ts';
import { closeCameraStream, openCameraStream } from './cameraStream.ts';
import { watchCamera, type CameraDeath } from './cameraWatch.ts';
import { earlierReadingFor } from './earlierReading.ts';
import { feedLivePictures, type FeedEnd } from './livePictures.ts';
import type { MeasureWorker } from './measureWorker.ts';
import type { SweepRun } from './sessionStore.ts';

export interface LiveSweepRun {
  /** Resolves when the sweep has been read or has failed. */
  readonly done: Promise<void>;
  /** Takes no more pictures and reads what there is. */
  finish(): void;
  /** Lets go of the camera; the run must have been made void. */
  abandon(): void;
}

type SweepEnd = FeedEnd | CameraDeath | 'enough';

/** Sweeps live from a camera until the turn is closed, the person ends it, or something breaks. */
export function runLiveSweep(
  run: SweepRun,
  worker: MeasureWorker,
  ask: CameraOptions & { readonly setup: SweepSetup },
): LiveSweepRun {
  const { setup, errand = NO_ERRAND } = ask;
  let end: (why: SweepEnd) => void = () => undefined;
  const asked = new Promise<SweepEnd>((resolve) => (end = resolve));
  let stream: MediaStream | null = null;
  const letGo = () => {
    if (stream) closeCameraStream(stream);
  };

  const sweep = async (): Promise<void> => {
    const earlier = earlierReadingFor(setup, ask.earlier ?? null);
    if (!earlier.ok) return run.fail(earlier.failure.code, earlier.failure.evidence);
    const camera = await openCameraStream(ask.deviceId);
    if (!camera.ok) return run.fail(camera.failure.code, camera.failure.evidence);
    stream = camera.value;
    if (!run.isCurrent()) return letGo();
    const shown = { progress: null, fraction: null, framesDropped: 0 };
    run.show({ source: 'camera', errand, setup, stream, notice: null, ...shown });
    for (let restarted = false; ; restarted = true) {
      const started = await worker.startLive(setup, earlier.value, {
        progress(progress) {
          run.update({ progress });
          if (progress.enough) end('enough');
        },
        preview: (picture) => picture.close(),
      });
      const why = started.ok ? await untilEnd(run, worker, stream, asked) : 'worker-crashed';
      if (!run.isCurrent()) return letGo();
      if (why !== 'worker-crashed')
        return readWhatWasSeen(run, worker, { setup, errand, notice: endNotice(why) });
      if (restarted) return run.fail('worker-failed');
      run.update({ ...shown, notice: noticeFor('worker-restarted') });
    }
  };

  return { done: sweep().finally(letGo), finish: () => end('over'), abandon: letGo };
}

async function untilEnd(
  run: SweepRun,
  worker: MeasureWorker,
  stream: MediaStream,
  asked: Promise<SweepEnd>,
): Promise<SweepEnd> {
  const feed = feedLivePictures(stream, worker);
  const watch = watchCamera(stream, worker, feed, (framesDropped) => run.update({ framesDropped }));
  try {
    return await Promise.race([asked, feed.ended, watch.died]);
  } finally {
    watch.stop();
    feed.stop();
  }
}

async function readWhatWasSeen(
  run: SweepRun,
  worker: MeasureWorker,
  sweep: { setup: SweepSetup; errand: SweepErrand; notice: Notice | null },
): Promise<void> {
  const finished = await worker.finishLive();
  if (!run.isCurrent()) return;
  if (!finished.ok) return run.fail('worker-failed', finished.failure.evidence);
  if (!finished.value) return run.fail('worker-failed', { sweep: 'none was running' });
  run.showRead({ source: 'camera', result: finished.value, ...sweep });
}

function endNotice(why: SweepEnd): Notice | null {
  switch (why) {
    case 'camera-silent':
    case 'camera-unplugged':
    case 'picture-changed':
      return noticeFor(why);
    default:
      return null;
  }
}
