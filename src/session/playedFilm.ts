/**
 * The next rung where a browser has no decoder that a film can be given to picture by picture: it
 * plays the film, as fast as it was taken, and each picture that it shows is measured. The times are
 * the film's own; a picture that comes while one is still on its way is left out.
 */
export type PlayedEnd = 'played' | 'broken-off' | 'unplayable' | 'stopped';

/** Measures one picture; false when no more are wanted. The receiver closes it. */
export type TakePicture = (
  picture: VideoFrame | ImageBitmap,
  timeS: number,
  fraction: number,
) => Promise<boolean>;

/** A film that has shown nothing for so long will not: a seek in a large one takes a second or two. */
const STUCK_AFTER_MS = 10_000;
const LOOK_INTERVAL_MS = 500;

export async function playFilm(film: Blob, take: TakePicture): Promise<PlayedEnd> {
  const video = document.createElement('video');
  if (!('requestVideoFrameCallback' in video)) return 'unplayable';
  video.muted = true;
  video.playsInline = true;
  const address = URL.createObjectURL(film);
  try {
    return await play(video, address, take);
  } finally {
    video.removeAttribute('src');
    video.load();
    URL.revokeObjectURL(address);
  }
}

function play(video: HTMLVideoElement, address: string, take: TakePicture): Promise<PlayedEnd> {
  return new Promise((resolve) => {
    let inFlight: Promise<unknown> | null = null;
    let measured = 0;
    let shownMs = performance.now();
    let isOver = false;
    const end = (how: PlayedEnd) => {
      isOver = true;
      clearInterval(watch);
      document.removeEventListener('visibilitychange', onSight);
      // The last picture counts: it may still be on its way.
      void Promise.resolve(inFlight).finally(() => resolve(how));
    };
    const endOfPictures = () => end(measured > 0 ? 'broken-off' : 'unplayable');
    const measure = async (timeS: number) => {
      try {
        const fraction = video.duration > 0 ? Math.min(1, timeS / video.duration) : 0;
        if (!(await take(await pictureOf(video, timeS), timeS, fraction))) end('stopped');
        measured += 1;
      } catch {
        // One that cannot be taken is one left out.
      } finally {
        inFlight = null;
      }
    };
    const onPicture = (_: number, { mediaTime }: VideoFrameCallbackMetadata) => {
      if (isOver) return;
      shownMs = performance.now();
      inFlight ??= measure(mediaTime);
      video.requestVideoFrameCallback(onPicture);
    };
    // A page out of sight is shown nothing: the film waits for it.
    const onSight = () => {
      shownMs = performance.now();
      if (document.hidden) video.pause();
      else start();
    };
    const start = () => void video.play().catch(() => !document.hidden && endOfPictures());
    const watch = setInterval(() => {
      if (document.hidden) shownMs = performance.now();
      else if (performance.now() - shownMs > STUCK_AFTER_MS) endOfPictures();
    }, LOOK_INTERVAL_MS);
    video.requestVideoFrameCallback(onPicture);
    video.addEventListener('ended', () => end('played'));
    video.addEventListener('error', endOfPictures);
    document.addEventListener('visibilitychange', onSight);
    video.src = address;
    if (!document.hidden) start();
  });
}

async function pictureOf(
  video: HTMLVideoElement,
  timeS: number,
): Promise<VideoFrame | ImageBitmap> {
  return 'VideoFrame' in globalThis
    ? new VideoFrame(video, { timestamp: Math.round(timeS * 1e6) })
    : createImageBitmap(video);
}
