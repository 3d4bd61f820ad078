import { SourcedField } from '../parts/SourcedField.tsx';
import { CameraChoice } from '../setup/CameraChoice.tsx';
import { signsText } from '../words/signsText.ts';
import { words } from '../words/words.ts';
import type { StandPartProps } from './BallStock.tsx';
import { STAND_RANGES } from './ranges.ts';
import { TiltFromSensor } from './TiltFromSensor.tsx';

/** Where the line lies on the stand, and how the camera looks at it. */
export function CameraFields({ stand, units, edit }: StandPartProps) {
  const { camera } = stand;
  const text = words.stand;
  const keepCamera = (change: Partial<typeof camera>) =>
    edit.keep({ ...stand, camera: { ...camera, ...change } });
  return (
    <section className="group">
      <h2>{text.groups.camera}</h2>
      <SourcedField
        label={text.line}
        name="lineAbovePlateMm"
        help={text.lineHelp}
        quantity="length"
        units={units}
        value={stand.lineAbovePlateMm}
        proposal={50}
        range={STAND_RANGES.lineAbovePlateMm}
        mayBeEmpty
        onValue={(lineAbovePlateMm) => edit.keep({ ...stand, lineAbovePlateMm })}
      />
      <SourcedField
        label={text.downTilt}
        name="downTiltDeg"
        help={text.downTiltHelp}
        quantity="angle"
        units={units}
        value={camera.downTiltDeg}
        range={STAND_RANGES.downTiltDeg}
        onValue={(downTiltDeg) => downTiltDeg && keepCamera({ downTiltDeg })}
      />
      <TiltFromSensor
        onTilt={(value) => keepCamera({ downTiltDeg: { value, origin: 'measured' } })}
      />
      <SourcedField
        label={text.fieldOfView}
        name="horizontalFovDeg"
        help={text.fieldOfViewHelp}
        quantity="angle"
        units={units}
        value={camera.horizontalFovDeg}
        proposal={64}
        range={STAND_RANGES.horizontalFovDeg}
        mayBeEmpty
        onValue={(horizontalFovDeg) => keepCamera({ horizontalFovDeg })}
      />
      <CameraChoice
        deviceId={camera.deviceId ?? undefined}
        onDevice={(deviceId) => keepCamera({ deviceId: deviceId ?? null })}
      />
      {camera.tested !== undefined && (
        <p data-role="tried">{text.tried(signsText(camera.tested))}</p>
      )}
    </section>
  );
}
