import type { SourcedNumber, StandRecord } from '../../contract/logbook.ts';
import type { SightingState } from '../../contract/session.ts';
import { useApp } from '../shell/appContext.ts';
import { useStand } from '../shell/useLogbook.ts';

export interface CameraStand {
  readonly keepDevice: (deviceId: string | undefined) => void;
  readonly keepTilt: (downTiltDeg: SourcedNumber) => void;
}

const TILT_PATH = 'camera.downTiltDeg';

/** What is set at the sight about the camera belongs to the stand, and holds for what runs too. */
export function useCameraStand({ setup, errand }: SightingState): CameraStand {
  const { session, logbook } = useApp();
  const stand = useStand();
  const keep = (change: Partial<StandRecord['camera']>) => {
    if (!stand?.ok) return;
    const camera = { ...stand.value.camera, ...change };
    void logbook.saveStand({ ...stand.value, camera });
  };
  return {
    // With the stand's camera the sight opens anew.
    keepDevice: (deviceId) => keep({ deviceId: deviceId ?? null }),
    keepTilt(downTiltDeg) {
      keep({ downTiltDeg });
      const others = errand.assumed.filter((path) => path !== TILT_PATH);
      session.changeSight(
        { ...setup, camera: { ...setup.camera, downTiltDeg: downTiltDeg.value } },
        'view',
        downTiltDeg.origin === 'assumed' ? [...others, TILT_PATH] : others,
      );
    },
  };
}
