import { useEffect, useId, useState } from 'react';

import { words } from '../words/words.ts';

export interface CameraChoiceProps {
  readonly deviceId: string | undefined;
  readonly onDevice: (deviceId: string | undefined) => void;
}

/** Which camera, where there are several; with one there is nothing to choose. */
export function CameraChoice({ deviceId, onDevice }: CameraChoiceProps) {
  const id = useId();
  const cameras = useCameras();
  if (cameras.length < 2) return null;
  return (
    <div className="field">
      <label htmlFor={id}>{words.setup.device}</label>
      <select
        id={id}
        value={deviceId ?? ''}
        onChange={(event) => onDevice(event.currentTarget.value || undefined)}
      >
        <option value="">{words.setup.deviceAny}</option>
        {cameras.map((camera, index) => (
          <option key={camera.deviceId} value={camera.deviceId}>
            {camera.label || words.setup.deviceUnnamed(index)}
          </option>
        ))}
      </select>
    </div>
  );
}

/** Cameras that can be told apart; before the first permission browsers name none. */
function useCameras(): readonly MediaDeviceInfo[] {
  const [cameras, setCameras] = useState<readonly MediaDeviceInfo[]>([]);
  useEffect(() => {
    // Absent on a page that is not secure.
    const media = navigator.mediaDevices as MediaDevices | undefined;
    if (media === undefined) return;
    let gone = false;
    const list = async () => {
      const devices = await media.enumerateDevices().catch(() => []);
      if (gone) return;
      setCameras(devices.filter((one) => one.kind === 'videoinput' && one.deviceId !== ''));
    };
    const onChange = () => void list();
    onChange();
    media.addEventListener('devicechange', onChange);
    return () => {
      gone = true;
      media.removeEventListener('devicechange', onChange);
    };
  }, []);
  return cameras;
}
