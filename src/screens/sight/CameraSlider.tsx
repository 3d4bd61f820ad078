import { useId } from 'react';

import type { CameraControl, CameraSetting } from '../../session/cameraControls.ts';
import { OnOffSwitch } from '../parts/OnOffSwitch.tsx';
import { StepLine } from '../parts/StepLine.tsx';
import { formatShare } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface CameraSliderProps {
  readonly control: CameraControl;
  readonly onSetting: (setting: CameraSetting) => void;
}

/** One press changes a setting by this share of its range, or by the camera's own step if larger. */
const PRESS_SHARE = 0.05;

/** One setting of the camera, told as a share of its range: cameras know no common units. */
export function CameraSlider({ control, onSetting }: CameraSliderProps) {
  const { name, min, max, step, value, hasAuto } = control;
  const id = useId();
  const label = words.sight.controls[name];
  const isAuto = value === 'auto';
  const shown = isAuto ? min : value;
  const press = (direction: 1 | -1) => {
    const by = Math.max(step, Math.round((PRESS_SHARE * (max - min)) / step) * step);
    onSetting(Math.min(max, Math.max(min, shown + direction * by)));
  };
  return (
    <div className="sight-slider" data-control={name}>
      {hasAuto && (
        <OnOffSwitch
          label={words.sight.controlAuto(label)}
          isOn={isAuto}
          onSwitch={(isOn) => onSetting(isOn ? 'auto' : (min + max) / 2)}
        />
      )}
      {!isAuto && (
        <>
          <label htmlFor={id}>{label}</label>
          <StepLine label={label} isLeast={shown <= min} isMost={shown >= max} onStep={press}>
            <input
              id={id}
              type="range"
              {...{ min, max, step }}
              value={shown}
              aria-valuetext={formatShare((shown - min) / (max - min))}
              onChange={(event) => onSetting(Number(event.currentTarget.value))}
            />
          </StepLine>
        </>
      )}
    </div>
  );
}
