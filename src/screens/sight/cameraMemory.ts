import {
  CAMERA_CONTROLS,
  setCamera,
  type CameraControlName,
  type CameraSetting,
  type CameraSettings,
} from '../../session/cameraControls.ts';
import { storedValue, storeValue } from '../state/preference.ts';

/** Each camera has its own ranges: what was set is remembered by camera. */
const keyOf = (deviceId: string | undefined) => `camera.${deviceId ?? ''}`;

function rememberedSettings(deviceId: string | undefined): CameraSettings {
  const stored = storedValue(keyOf(deviceId));
  if (typeof stored !== 'object' || stored === null) return {};
  const known = Object.entries(stored).filter(
    ([name, value]) =>
      CAMERA_CONTROLS.some((control) => control === name) &&
      (value === 'auto' || (typeof value === 'number' && Number.isFinite(value))),
  );
  return Object.fromEntries(known);
}

export function rememberSetting(
  deviceId: string | undefined,
  name: CameraControlName,
  setting: CameraSetting,
): void {
  storeValue(keyOf(deviceId), { ...rememberedSettings(deviceId), [name]: setting });
}

/** Sets a camera that has just been opened as it was set before. */
export async function prepareCamera(stream: MediaStream): Promise<void> {
  const [track] = stream.getVideoTracks();
  await setCamera(stream, rememberedSettings(track?.getSettings().deviceId));
}
