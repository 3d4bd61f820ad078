/**
 * Called once for each new picture of a playing video. `take` makes a copy of it that can be sent
 * away; `timeS` is the picture's time on one clock for the whole sweep; `missed` says how many came
 * between this and the last one unseen.
 */
export type OnVideoPicture = (
  take: () => Promise<VideoFrame | ImageBitmap>,
  timeS: number,
  missed: number,
) => void;

/** Plays the stream out of sight and reports each of its pictures, until stopped. */
export function videoPictures(
  stream: MediaStream,
  kind: 'video-frame' | 'image-bitmap',
  onPicture: OnVideoPicture,
): { stop(): void } {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.srcObject = stream;
  let stopped = false;
  const take = async (timeS: number): Promise<VideoFrame | ImageBitmap> =>
    kind === 'video-frame'
      ? new VideoFrame(video, { timestamp: Math.round(timeS * 1e6) })
      : createImageBitmap(video);
  const report = (timeS: number, missed: number) => onPicture(() => take(timeS), timeS, missed);
  if ('requestVideoFrameCallback' in video) {
    followPictures(video, () => stopped, report);
  } else {
    followScreen(video, () => stopped, report);
  }
  // Refused play shows as a camera that sends nothing, which the watchdog reports.
  void video.play().catch(() => undefined);
  return {
    stop() {
      stopped = true;
      video.srcObject = null;
    },
  };
}

function followPictures(
  video: HTMLVideoElement,
  stopped: () => boolean,
  report: (timeS: number, missed: number) => void,
): void {
  let clock: ((nowMs: number, facts: VideoFrameCallbackMetadata) => number) | null = null;
  let presented: number | null = null;
  const onPicture = (nowMs: number, facts: VideoFrameCallbackMetadata) => {
    if (stopped()) return;
    // Chosen at the first picture and kept: two clocks in one sweep would tear its times apart.
    clock ??= bestClock(facts);
    const missed = presented === null ? 0 : Math.max(0, facts.presentedFrames - presented - 1);
    presented = facts.presentedFrames;
    report(clock(nowMs, facts), missed);
    video.requestVideoFrameCallback(onPicture);
  };
  video.requestVideoFrameCallback(onPicture);
}

/** The time of capture where the browser tells it, else that of the stream, else that of showing. */
function bestClock(first: VideoFrameCallbackMetadata) {
  if (first.captureTime !== undefined) {
    return (nowMs: number, f: VideoFrameCallbackMetadata) => (f.captureTime ?? nowMs) / 1000;
  }
  if (first.mediaTime > 0) return (_: number, f: VideoFrameCallbackMetadata) => f.mediaTime;
  return (nowMs: number) => nowMs / 1000;
}

/** For browsers that do not tell of new pictures: looks once a screen refresh. */
function followScreen(
  video: HTMLVideoElement,
  stopped: () => boolean,
  report: (timeS: number, missed: number) => void,
): void {
  let lastS = -1;
  const look = () => {
    if (stopped()) return;
    if (video.readyState >= HTMLMediaElement.HAVE_CURRENT_DATA && video.currentTime !== lastS) {
      lastS = video.currentTime;
      report(lastS, 0);
    }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}
