import { useEffect, useState } from 'react';

import type { SightingState } from '../../contract/session.ts';
import {
  cameraControls,
  setCameraControl,
  type CameraControl,
  type CameraSetting,
} from '../../session/cameraControls.ts';
import { STAND_RANGES } from '../bench/ranges.ts';
import { TiltFromSensor } from '../bench/TiltFromSensor.tsx';
import { SourcedField } from '../parts/SourcedField.tsx';
import { CameraChoice } from '../setup/CameraChoice.tsx';
import { useApp } from '../shell/appContext.ts';
import { useStand } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';
import { rememberSetting } from './cameraMemory.ts';
import { CameraSlider } from './CameraSlider.tsx';
import { useCameraStand } from './useCameraStand.ts';
import '../look/forms.css';

/** Which camera, how it is set, and how far down it looks. */
export function CameraPanel({ state }: { readonly state: SightingState }) {
  const { units } = useApp().settings;
  const stand = useStand();
  const { keepDevice, keepTilt } = useCameraStand(state);
  if (!stand?.ok) return null;
  const { camera } = stand.value;
  return (
    <div className="sight-camera fields">
      <section className="group">
        <h2>{words.sight.camera}</h2>
        <CameraChoice deviceId={camera.deviceId ?? undefined} onDevice={keepDevice} />
        <CameraSliders state={state} />
      </section>
      <section className="group">
        <SourcedField
          label={words.stand.downTilt}
          name="downTiltDeg"
          help={words.stand.downTiltHelp}
          quantity="angle"
          units={units}
          value={camera.downTiltDeg}
          range={STAND_RANGES.downTiltDeg}
          onValue={(downTiltDeg) => downTiltDeg && keepTilt(downTiltDeg)}
        />
        <TiltFromSensor onTilt={(value) => keepTilt({ value, origin: 'measured' })} />
      </section>
    </div>
  );
}

/** Some browsers know what a camera can do only a while after it was opened, ms. */
const LOOK_AGAIN_MS = 1000;

function CameraSliders({ state }: { readonly state: SightingState }) {
  const { session } = useApp();
  const [track] = state.stream.getVideoTracks();
  const [controls, setControls] = useState<readonly CameraControl[]>([]);
  useEffect(() => {
    if (track === undefined) return;
    const look = () => setControls(cameraControls(track));
    look();
    const timer = setTimeout(look, LOOK_AGAIN_MS);
    return () => clearTimeout(timer);
  }, [track]);
  if (track === undefined) return null;
  const set = async ({ name }: CameraControl, setting: CameraSetting) => {
    const isTaken = await setCameraControl(track, name, setting);
    setControls(cameraControls(track));
    if (!isTaken) return;
    rememberSetting(track.getSettings().deviceId, name, setting);
    // A nearer picture is another one: all that was found in it lies elsewhere.
    if (name === 'zoom') session.changeSight(state.setup, 'view');
  };
  if (controls.length === 0) return <p>{words.sight.noControls}</p>;
  return controls.map((control) => (
    <CameraSlider
      key={control.name}
      control={control}
      onSetting={(setting) => void set(control, setting)}
    />
  ));
}
