import type { CameraOptions } from '../contract/session.ts';
import { failed, succeeded, type Outcome } from '../contract/outcome.ts';

export type CameraTrouble = 'camera-missing' | 'camera-refused' | 'camera-busy' | 'camera-insecure';

/** What the measuring core is made for: 720p; a camera without it gives what it has. */
const WANTED_WIDTH_PX = 1280;
const WANTED_HEIGHT_PX = 720;
const WANTED_FRAMES_PER_S = 30;

/** Opens what was asked for: another source of live pictures, else a camera. */
export async function openLiveStream({
  source,
  deviceId,
}: Pick<CameraOptions, 'source' | 'deviceId'>): Promise<Outcome<MediaStream, CameraTrouble>> {
  if (!source) return openCameraStream(deviceId);
  return source
    .open()
    .then(succeeded, (error: unknown) =>
      failed('camera-missing' as const, { source: String(error) }),
    );
}

/** Asks for a camera: the one named, else the one on the tablet's back where there is one. */
async function openCameraStream(deviceId?: string): Promise<Outcome<MediaStream, CameraTrouble>> {
  // The browser hides the whole interface from a page that did not come by HTTPS or localhost.
  if (!navigator.mediaDevices?.getUserMedia) return failed('camera-insecure');
  const which = deviceId ? { deviceId: { exact: deviceId } } : { facingMode: 'environment' };
  try {
    return succeeded(
      await navigator.mediaDevices.getUserMedia({
        audio: false,
        video: {
          ...which,
          width: { ideal: WANTED_WIDTH_PX },
          height: { ideal: WANTED_HEIGHT_PX },
          frameRate: { ideal: WANTED_FRAMES_PER_S },
        },
      }),
    );
  } catch (error) {
    const name = error instanceof DOMException ? error.name : '';
    return failed(troubleOf(name), { browser: name || String(error) });
  }
}

/** Names of getUserMedia's failures (W3C Media Capture and Streams, section 10.2). */
function troubleOf(errorName: string): CameraTrouble {
  switch (errorName) {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'camera-refused';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'camera-missing';
    default:
      return 'camera-busy';
  }
}

export function closeCameraStream(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
