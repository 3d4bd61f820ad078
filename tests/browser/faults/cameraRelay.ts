import type { Page } from '@playwright/test';

/** What a test can do to the camera of a page while its pictures are on their way. */
export interface CameraRelay {
  /** The same picture over and over, each with its own time. */
  freeze(): Promise<void>;
  /** No picture at all; the track stays as it is. */
  silence(): Promise<void>;
  /** Pictures as they come, after `freeze` or `silence`. */
  flow(): Promise<void>;
  /** From now on every picture in this size. */
  resize(widthPx: number, heightPx: number): Promise<void>;
  /** From now on one picture of so many. */
  thinOut(every: number): Promise<void>;
  /** The camera's own clock is set by so much, once more each time. */
  setClock(bySeconds: number): Promise<void>;
  /** What the track says of itself. */
  setLens(settings: MediaTrackSettings): Promise<void>;
  /** The camera is pulled out. */
  unplug(): Promise<void>;
  /** Cameras that are open now: their light is on. */
  openCameras(): Promise<number>;
}

/**
 * Puts itself between the browser's made-up camera and the page: every picture goes through it, so
 * a test can do to a real stream what a cable, a tablet or another program does. Call it before the
 * page is opened.
 */
export async function relayCamera(page: Page): Promise<CameraRelay> {
  await page.addInitScript(standBetween);
  const set = (part: Partial<RelayState>) =>
    page.evaluate((part) => void Object.assign(window.cameraRelay, part), part);
  return {
    freeze: () => set({ mode: 'frozen' }),
    silence: () => set({ mode: 'silent' }),
    flow: () => set({ mode: 'flowing' }),
    resize: (widthPx, heightPx) => set({ size: [widthPx, heightPx] }),
    thinOut: (every) => set({ every }),
    setClock: (bySeconds) =>
      page.evaluate((by) => void (window.cameraRelay.aheadS += by), bySeconds),
    setLens: (settings) => set({ settings }),
    unplug: () => page.evaluate(() => window.cameraRelay.open.forEach((end) => end())),
    openCameras: () => page.evaluate(() => window.cameraRelay.open.size),
  };
}

interface RelayState {
  mode: 'flowing' | 'frozen' | 'silent';
  size: readonly [number, number] | null;
  every: number;
  aheadS: number;
  settings: MediaTrackSettings;
  /** Ends each of the cameras that are open. */
  readonly open: Set<() => void>;
}

declare global {
  interface Window {
    cameraRelay: RelayState;
  }
}

/** Runs in the page. */
function standBetween(): void {
  const relay: RelayState = {
    mode: 'flowing',
    size: null,
    every: 1,
    aheadS: 0,
    settings: {},
    open: new Set(),
  };
  window.cameraRelay = relay;
  const devices = navigator.mediaDevices;
  const ask = devices.getUserMedia.bind(devices);
  devices.getUserMedia = async (constraints) => {
    const [camera] = (await ask(constraints)).getVideoTracks();
    if (!camera) throw new Error('a made-up camera without pictures');
    const out = new MediaStreamTrackGenerator({ kind: 'video' });
    out.getSettings = () => ({ ...camera.getSettings(), ...relay.settings });
    const end = () => {
      relay.open.delete(end);
      camera.stop();
      MediaStreamTrack.prototype.stop.call(out);
    };
    out.stop = end;
    relay.open.add(end);
    void new MediaStreamTrackProcessor({ track: camera }).readable
      .pipeThrough(new TransformStream({ transform: changePicture() }))
      .pipeTo(out.writable)
      .catch(() => undefined);
    return new MediaStream([out]);
  };

  function changePicture() {
    let held: Copy | null = null;
    let count = 0;
    return async (frame: VideoFrame, to: TransformStreamDefaultController<VideoFrame>) => {
      count += 1;
      const timestamp = frame.timestamp + Math.round(relay.aheadS * 1e6);
      held = relay.mode === 'frozen' ? (held ?? (await copyOf(frame))) : null;
      if (relay.mode !== 'silent' && count % relay.every === 0) {
        to.enqueue(held ? pictureOf(held, timestamp) : new VideoFrame(drawn(frame), { timestamp }));
      }
      frame.close();
    };
  }

  /** A camera has few buffers: one that is held for long is missed by it. */
  async function copyOf(frame: VideoFrame): Promise<Copy> {
    const { format, codedWidth, codedHeight } = frame;
    const bytes = new Uint8Array(frame.allocationSize());
    const layout = await frame.copyTo(bytes);
    return { bytes, init: { format: format!, codedWidth, codedHeight, layout } };
  }

  function pictureOf({ bytes, init }: Copy, timestamp: number): VideoFrame {
    return new VideoFrame(bytes, { ...init, timestamp });
  }

  function drawn(frame: VideoFrame): VideoFrame | OffscreenCanvas {
    if (relay.size === null) return frame;
    const canvas = new OffscreenCanvas(...relay.size);
    canvas.getContext('2d')!.drawImage(frame, 0, 0, ...relay.size);
    return canvas;
  }
}

interface Copy {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly init: Omit<VideoFrameBufferInit, 'timestamp'>;
}
