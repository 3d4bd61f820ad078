import type { LiveFeed } from './livePictures.ts';
import type { MeasureWorker } from './measureWorker.ts';

/** A camera that has sent nothing for so long is dead: in low light one still sends ten a second. */
const SILENCE_LIMIT_MS = 3000;
/** Until its first picture a camera may take this long: some move their lens first. */
const START_LIMIT_MS = 10_000;
const LOOK_INTERVAL_MS = 500;

export type CameraDeath = 'camera-silent' | 'camera-unplugged';

/**
 * Watches a live sweep by the pictures that reach the measuring core: neither the track's flags nor
 * its events tell of a camera that fell asleep. The count comes from the worker between two
 * pictures, so a worker that is busy is never taken for a silent camera.
 */
export function watchCamera(
  stream: MediaStream,
  worker: MeasureWorker,
  feed: LiveFeed,
  onDropped: (framesDropped: number) => void,
): { readonly died: Promise<CameraDeath>; stop(): void } {
  let stopped = false;
  let lastTaken = -1;
  let changedMs = performance.now();
  let onDeath: (death: CameraDeath) => void = () => undefined;
  const died = new Promise<CameraDeath>((resolve) => (onDeath = resolve));
  const look = async () => {
    if (stopped) return;
    const taken = await worker.picturesTaken();
    if (stopped) return;
    if (taken.ok && taken.value !== lastTaken) {
      lastTaken = taken.value;
      changedMs = performance.now();
      onDropped(feed.framesDropped(lastTaken));
    }
    if (stream.getVideoTracks()[0]?.readyState === 'ended') return onDeath('camera-unplugged');
    const limitMs = lastTaken > 0 ? SILENCE_LIMIT_MS : START_LIMIT_MS;
    if (performance.now() - changedMs > limitMs) return onDeath('camera-silent');
    setTimeout(() => void look(), LOOK_INTERVAL_MS);
  };
  void look();
  return { died, stop: () => (stopped = true) };
}
