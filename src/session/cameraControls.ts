/** What of a camera can be set by hand, where browser and camera allow it. */
export const CAMERA_CONTROLS = ['exposure', 'focus', 'zoom'] as const;
export type CameraControlName = (typeof CAMERA_CONTROLS)[number];

/** By hand to a value in the camera's own unit, or left to the camera. */
export type CameraSetting = number | 'auto';
export type CameraSettings = Readonly<Partial<Record<CameraControlName, CameraSetting>>>;

export interface CameraControl {
  readonly name: CameraControlName;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: CameraSetting;
  /** True when the camera can be left to set it by itself. */
  readonly hasAuto: boolean;
}

interface Range {
  readonly min: number;
  readonly max: number;
  readonly step?: number;
}

/** W3C MediaStream Image Capture, section 4: ranges, and lists of modes; all may be missing. */
type Capabilities = Readonly<Record<string, Range | readonly string[] | undefined>>;
type Values = Readonly<Record<string, number | string | undefined>>;

/** How each control is called there; the first that the camera has is taken. */
const WAYS: Readonly<
  Record<CameraControlName, readonly { readonly value: string; readonly mode: string | null }[]>
> = {
  // Lighter or darker about what the camera measures holds through a change of light.
  exposure: [
    { value: 'exposureCompensation', mode: null },
    { value: 'exposureTime', mode: 'exposureMode' },
  ],
  focus: [{ value: 'focusDistance', mode: 'focusMode' }],
  zoom: [{ value: 'zoom', mode: null }],
};

/** Steps of a slider where the camera names none. */
const USUAL_STEPS = 20;

export function cameraControls(track: MediaStreamTrack): readonly CameraControl[] {
  // Missing in some browsers: nothing can be set there.
  const can = (track.getCapabilities?.() ?? {}) as unknown as Capabilities;
  const now = track.getSettings() as unknown as Values;
  return CAMERA_CONTROLS.flatMap((name) => {
    const way = wayOf(name, can);
    if (way === null) return [];
    const { min, max, step } = can[way.value] as Range;
    const isAuto = way.mode !== null && now[way.mode] !== 'manual';
    const value = now[way.value];
    return [
      {
        ...{ name, min, max },
        step: step !== undefined && step > 0 ? step : (max - min) / USUAL_STEPS,
        value: isAuto ? 'auto' : typeof value === 'number' ? value : min,
        hasAuto: way.mode !== null && modesOf(can, way.mode).includes('continuous'),
      },
    ];
  });
}

/** False when the camera did not take it; it then stands as it stood. */
export async function setCameraControl(
  track: MediaStreamTrack,
  name: CameraControlName,
  setting: CameraSetting,
): Promise<boolean> {
  const can = (track.getCapabilities?.() ?? {}) as unknown as Capabilities;
  const way = wayOf(name, can);
  if (way === null) return false;
  const wanted =
    setting === 'auto'
      ? way.mode !== null && { [way.mode]: 'continuous' }
      : { ...(way.mode !== null && { [way.mode]: 'manual' }), [way.value]: setting };
  if (!wanted) return false;
  return track.applyConstraints({ advanced: [wanted] as MediaTrackConstraintSet[] }).then(
    () => true,
    () => false,
  );
}

/** As the person had set this camera; what it does not take is left as it is. */
export async function setCamera(stream: MediaStream, settings: CameraSettings): Promise<void> {
  const [track] = stream.getVideoTracks();
  if (track === undefined) return;
  for (const name of CAMERA_CONTROLS) {
    const setting = settings[name];
    if (setting !== undefined) await setCameraControl(track, name, setting);
  }
}

function wayOf(name: CameraControlName, can: Capabilities) {
  return (
    WAYS[name].find(({ value, mode }) => {
      const range = can[value] as Range | undefined;
      const isThere = range !== undefined && range.max > range.min;
      return isThere && (mode === null || modesOf(can, mode).includes('manual'));
    }) ?? null
  );
}

function modesOf(can: Capabilities, mode: string): readonly string[] {
  return (can[mode] as readonly string[] | undefined) ?? [];
}
