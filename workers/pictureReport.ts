import type { PictureOverlay, SweepProgress } from '../src/contract/sweep.ts';
import { AS_STORED, type Showing } from './turnedPicture.ts';

/** How far a film has been read: its share, 0 to 1, in the first or the second time through. */
export interface FilmPlace {
  readonly fraction: number;
  readonly pass: 1 | 2;
}

/** What the worker tells while it reads; called across the worker boundary, so every call is a promise. */
export interface SweepListener {
  /** `place` is null for a camera. */
  progress(progress: SweepProgress, place: FilmPlace | null): void;
  /** A picture to show, with what was found in it; the receiver closes it. */
  preview(picture: ImageBitmap | VideoFrame, overlay: PictureOverlay | null): void | Promise<void>;
}

/** Ten a second: smooth to the eye, and a hundredth of the time of a measuring thread. */
const PROGRESS_INTERVAL_MS = 100;
/** Five of a film: decoding, measuring and the page share the processors, and each report draws the page anew. */
const FILM_PROGRESS_INTERVAL_MS = 200;
/** Four a second: a film runs by some times faster than it was taken, and more could not be followed. */
const PREVIEW_INTERVAL_MS = 250;
/** Wide enough for a 10-inch tablet's picture pane, a quarter of the bytes of a 720p picture. */
const PREVIEW_WIDTH_PX = 640;

/** Twenty a second from a camera: a hand that is led by the picture sees no jumps. */
const LED_PREVIEW_INTERVAL_MS = 50;
/** Ten a second in a sweep: what is looked at then is the ring. */
const SWEEP_PREVIEW_INTERVAL_MS = 100;
/** Showing may take this share of the page's time; a slow one shows fewer, so that it can send more. */
const SHOWING_SHARE = 0.2;

export interface PictureReport {
  progress(progress: SweepProgress, place: FilmPlace | null): void;
  /**
   * Shows the frame that `overlay` was found in, when the last one is old enough; resolves when the
   * frame may be closed.
   */
  preview(frame: VideoFrame, overlay: PictureOverlay | null, showing?: Showing): Promise<void>;
}

type Transfer = <T extends ImageBitmap | VideoFrame>(picture: T) => T;

/**
 * Passes on progress and previews no more often than they are of use. The frame itself is shown, which
 * costs this thread nothing, but only one at a time: a decoder has few to give away. One that has to
 * be turned is drawn anew first, which takes about as long as measuring a picture.
 */
export function createPictureReport(listener: SweepListener, transfer: Transfer): PictureReport {
  let nextMs = -Infinity;
  return {
    progress: progressReport(listener, FILM_PROGRESS_INTERVAL_MS),
    async preview(frame, overlay, showing = AS_STORED) {
      const nowMs = performance.now();
      if (nowMs < nextMs) return;
      nextMs = Infinity;
      const isUpright = showing.rotationDeg === 0 && !showing.mirrored;
      const picture = isUpright ? frame.clone() : await turnedPreview(frame, showing);
      void Promise.resolve(listener.preview(transfer(picture), overlay))
        .catch(() => undefined)
        .finally(() => (nextMs = nowMs + PREVIEW_INTERVAL_MS));
    },
  };
}

/**
 * For a camera the frame itself is shown: that costs this thread nothing. A camera has few frames
 * to give away, so the next is sent only when the last one has been shown.
 */
export function createLiveReport(
  listener: SweepListener,
  transfer: Transfer,
  use: 'leading' | 'sweeping',
): PictureReport {
  const intervalMs = use === 'leading' ? LED_PREVIEW_INTERVAL_MS : SWEEP_PREVIEW_INTERVAL_MS;
  let nextMs = -Infinity;
  return {
    progress: progressReport(listener, PROGRESS_INTERVAL_MS),
    async preview(frame, overlay) {
      const startMs = performance.now();
      if (startMs < nextMs) return;
      nextMs = Infinity;
      const shown = Promise.resolve(listener.preview(transfer(frame.clone()), overlay));
      void shown
        .catch(() => undefined)
        .finally(() => {
          const tookMs = performance.now() - startMs;
          nextMs = startMs + Math.max(intervalMs, tookMs / SHOWING_SHARE);
        });
    },
  };
}

function progressReport(listener: SweepListener, intervalMs: number): PictureReport['progress'] {
  let progressMs = -Infinity;
  return (progress, place) => {
    const nowMs = performance.now();
    if (nowMs - progressMs < intervalMs) return;
    progressMs = nowMs;
    listener.progress(progress, place);
  };
}

async function turnedPreview(frame: VideoFrame, showing: Showing): Promise<ImageBitmap> {
  const scale = Math.min(1, PREVIEW_WIDTH_PX / frame.displayWidth);
  const width = Math.round(frame.displayWidth * scale);
  const height = Math.round(frame.displayHeight * scale);
  const onItsSide = showing.rotationDeg % 180 !== 0;
  const canvas = new OffscreenCanvas(onItsSide ? height : width, onItsSide ? width : height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no 2d canvas in this worker');
  context.translate(canvas.width / 2, canvas.height / 2);
  if (showing.mirrored) context.scale(-1, 1);
  context.rotate((showing.rotationDeg * Math.PI) / 180);
  context.drawImage(frame, -width / 2, -height / 2, width, height);
  return canvas.transferToImageBitmap();
}
