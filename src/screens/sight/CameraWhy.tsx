import { words } from '../words/words.ts';
import { useCameraLeave } from './useCameraLeave.ts';

/** Beside a button that makes the browser ask for the camera; nothing where it will not ask. */
export function CameraWhy() {
  const { stage } = useCameraLeave();
  if (stage !== 'explain') return null;
  return (
    <p data-role="camera-why">
      {words.sight.cameraWhy} {words.sight.cameraAsk}
    </p>
  );
}
