import type { OwnFeed } from '../contract/session.ts';
import type { MeasureWorker } from './measureWorker.ts';
import { videoPictures } from './videoPictures.ts';

/** Why a live feed came to its end. */
export type FeedEnd =
  | 'over'
  | 'picture-changed'
  | 'camera-frozen'
  | 'camera-unplugged'
  | 'worker-crashed';

export interface LiveFeed {
  /** Resolves when no more pictures are sent; never rejects. */
  readonly ended: Promise<FeedEnd>;
  /** Pictures that the camera gave and that were not measured, when `taken` of them were. */
  framesDropped(taken: number): number;
  /** Sends no more pictures. The worker stops reading the stream when its sweep ends. */
  stop(): void;
}

/** How pictures travel from the camera to the worker, best first. */
export type FramePath = 'track-processor' | 'video-frame' | 'image-bitmap';

function bestFramePath(): FramePath {
  if ('MediaStreamTrackProcessor' in globalThis) return 'track-processor';
  return 'VideoFrame' in globalThis ? 'video-frame' : 'image-bitmap';
}

/** Sends the stream's pictures to the worker by the best path that the browser has. */
export function feedLivePictures(
  stream: MediaStream,
  worker: MeasureWorker,
  path: FramePath = bestFramePath(),
): LiveFeed {
  const track = stream.getVideoTracks()[0];
  if (!track) throw new Error('a camera stream without a picture track');
  return path === 'track-processor'
    ? feedByProcessor(track, worker)
    : feedByVideo(stream, worker, path);
}

/** A source that has a clock of its own waits for each picture to be measured: none is dropped. */
export function feedOwnPictures(source: OwnFeed, worker: MeasureWorker): LiveFeed {
  let end: (reason: FeedEnd) => void = () => undefined;
  const ended = new Promise<FeedEnd>((resolve) => (end = resolve));
  const feed = source(async (picture, timeS) => {
    const fate = await worker.addPicture(picture, timeS);
    if (!fate.ok) end('worker-crashed');
    else if (fate.value === 'taken') return true;
    else end(fate.value);
    return false;
  });
  return {
    ended,
    framesDropped: () => 0,
    stop() {
      feed.stop();
      end('over');
    },
  };
}

/** Counts of a camera track (W3C Media Capture Extensions, section "track statistics"); not in all browsers. */
interface CountingTrack {
  readonly stats?: { readonly totalFrames?: number };
}

/**
 * Pictures that may wait for the worker: work that outlasts a picture or two at 60 a second then costs
 * none. No more, since a camera has few frames to give away, and what is shown must not lag.
 */
const WAITING_PICTURES = 4;

/** The worker itself reads the camera's stream: the main thread touches no picture. */
function feedByProcessor(track: MediaStreamVideoTrack, worker: MeasureWorker): LiveFeed {
  const given = () => (track as CountingTrack).stats?.totalFrames ?? 0;
  const givenBefore = given();
  const processor = new MediaStreamTrackProcessor({ track, maxBufferSize: WAITING_PICTURES });
  const ended = worker.pumpStream(processor.readable).then((end): FeedEnd => {
    if (!end.ok) return 'worker-crashed';
    return end.value === 'stream-ended' ? 'camera-unplugged' : end.value;
  });
  return {
    ended,
    // One more may just be on its way; a browser without these counts reports none.
    framesDropped: (taken) => Math.max(0, given() - givenBefore - taken - 1),
    stop: () => undefined,
  };
}

/** The main thread takes each picture from a playing video and sends it; one is in flight at a time. */
function feedByVideo(
  stream: MediaStream,
  worker: MeasureWorker,
  path: Exclude<FramePath, 'track-processor'>,
): LiveFeed {
  let dropped = 0;
  let inFlight = false;
  let end: (reason: FeedEnd) => void = () => undefined;
  const ended = new Promise<FeedEnd>((resolve) => {
    end = (reason) => {
      pictures.stop();
      resolve(reason);
    };
  });
  const pictures = videoPictures(stream, path, (take, timeS, missed) => {
    dropped += missed;
    if (inFlight) {
      dropped += 1;
      return;
    }
    inFlight = true;
    void take()
      .then((picture) => worker.addPicture(picture, timeS))
      .then((fate) => {
        if (!fate.ok) end('worker-crashed');
        else if (fate.value !== 'taken') end(fate.value);
      })
      // A picture that could not be taken is one dropped: the watchdog sees when none comes at all.
      .catch(() => (dropped += 1))
      .finally(() => (inFlight = false));
  });
  return { ended, framesDropped: () => dropped, stop: () => end('over') };
}
