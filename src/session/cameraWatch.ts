import type { LiveFeed } from './livePictures.ts';
import type { MeasureWorker } from './measureWorker.ts';

/** A camera that has sent nothing for so long is dead: in low light one still sends ten a second. */
const SILENCE_LIMIT_MS = 3000;
/** Until its first picture, and after the page was hidden, a camera may take this long. */
const START_LIMIT_MS = 10_000;
const LOOK_INTERVAL_MS = 500;
/** A look that comes so much later than it was due says that page or machine was asleep. */
const ASLEEP_AFTER_MS = 2500;
/**
 * Between two pictures the worker answers at once; its longest work while a camera runs is the
 * first look at the edge, a second on a slow tablet.
 */
const WORKER_LIMIT_MS = 10_000;

export type CameraDeath = 'camera-silent' | 'camera-unplugged' | 'lens-changed' | 'worker-hung';

export interface CameraWatch {
  readonly died: Promise<CameraDeath>;
  stop(): void;
}

export interface CameraWatchAsk {
  readonly onDropped: (framesDropped: number) => void;
  /** Pictures came again after none had come while the page was hidden or the machine slept. */
  readonly onBack: () => void;
  /** The source waits for each picture to be measured: on a busy machine one may take seconds. */
  readonly hasOwnClock: boolean;
}

/**
 * Watches a live sweep by the pictures that reach the measuring core: neither the track's flags nor
 * its events tell of a camera that fell asleep. The count comes from the worker between two
 * pictures, so a worker that is busy is never taken for a silent camera. While the page is hidden a
 * tablet stops its camera: that is waited for.
 */
export function watchCamera(
  stream: MediaStream,
  worker: MeasureWorker,
  feed: LiveFeed,
  { onDropped, onBack, hasOwnClock }: CameraWatchAsk,
): CameraWatch {
  const track = stream.getVideoTracks()[0];
  const lens = track ? lensOf(track) : '';
  let stopped = false;
  let lastTaken = -1;
  let changedMs = performance.now();
  let lookedMs = performance.now();
  let limitMs = START_LIMIT_MS;
  /** When the last picture came before the page was hidden; null while pictures come. */
  let missedSinceMs: number | null = null;
  let onDeath: (death: CameraDeath) => void = () => undefined;
  const died = new Promise<CameraDeath>((resolve) => (onDeath = resolve));

  const notePictures = (taken: number, nowMs: number) => {
    // A machine that wakes may send pictures before the first look after its sleep.
    const missedMs = nowMs - (missedSinceMs ?? changedMs);
    if (lastTaken > 0 && missedMs > SILENCE_LIMIT_MS) onBack();
    missedSinceMs = null;
    lastTaken = taken;
    changedMs = nowMs;
    limitMs = taken > 0 && !hasOwnClock ? SILENCE_LIMIT_MS : START_LIMIT_MS;
    onDropped(feed.framesDropped(taken));
  };
  /** The wait for a picture starts anew when the page is back. */
  const noteAway = (nowMs: number) => {
    missedSinceMs ??= changedMs;
    changedMs = nowMs;
    limitMs = START_LIMIT_MS;
  };
  const look = async () => {
    if (stopped) return;
    const taken = await inTime(worker.picturesTaken());
    if (stopped) return;
    const nowMs = performance.now();
    // A look that waited in vain for the worker comes later by that wait alone.
    const waitedMs = LOOK_INTERVAL_MS + (taken === 'late' ? WORKER_LIMIT_MS : 0);
    const away = document.hidden || nowMs - lookedMs > waitedMs + ASLEEP_AFTER_MS;
    if (taken === 'late' && !away) return onDeath('worker-hung');
    if (taken !== 'late' && taken.ok && taken.value !== lastTaken) notePictures(taken.value, nowMs);
    else if (away) noteAway(nowMs);
    lookedMs = nowMs;
    if (track?.readyState === 'ended') return onDeath('camera-unplugged');
    if (track && lensOf(track) !== lens) return onDeath('lens-changed');
    if (!document.hidden && nowMs - changedMs > limitMs) return onDeath('camera-silent');
    setTimeout(() => void look(), LOOK_INTERVAL_MS);
  };
  void look();
  return { died, stop: () => (stopped = true) };
}

async function inTime<T>(answer: Promise<T>): Promise<T | 'late'> {
  let timer = 0;
  const late = new Promise<'late'>((resolve) => {
    timer = window.setTimeout(() => resolve('late'), WORKER_LIMIT_MS);
  });
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}

/** What tells one lens from another; sizes of pictures are told by the pictures themselves. */
function lensOf(track: MediaStreamTrack): string {
  const { deviceId, facingMode, zoom } = track.getSettings() as MediaTrackSettings & {
    readonly zoom?: number;
  };
  return JSON.stringify([deviceId, facingMode, zoom]);
}
