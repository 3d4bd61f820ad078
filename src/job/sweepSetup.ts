import type { StandRecord, WheelRecord } from '../contract/logbook.ts';
import type { SweepSetup } from '../contract/setup.ts';
import type { WheelState } from './wheelState.ts';

/** The setup of the next sweep of a wheel, and which of its values were only assumed. */
export interface NextSetup {
  readonly setup: SweepSetup;
  /** Paths in the setup, as `wheel.massKg`. */
  readonly assumed: readonly string[];
}

/**
 * A sweep after weights were put on names the sweep before it, so that the response is measured.
 * Nothing put on since: the sweep stands alone, as a repeat does.
 */
export function nextSetup(wheel: WheelRecord, stand: StandRecord, state: WheelState): NextSetup {
  const ring = wheel.rings[0]!;
  const { downTiltDeg, horizontalFovDeg } = stand.camera;
  const isCheck = state.lastSweep !== null && state.addedSince.length > 0;
  const setup: SweepSetup = {
    format: 'tiltsweep.setup/1',
    ...(wheel.label === '' ? {} : { label: wheel.label }),
    wheel: {
      massKg: wheel.massKg.value,
      edgeRadiusMm: wheel.edgeRadiusMm.value,
      weightRadiusMm: ring.radiusMm.value,
      ...(wheel.boreDiameterMm === null ? {} : { boreDiameterMm: wheel.boreDiameterMm.value }),
    },
    stand: {
      ballDiameterMm: wheel.ballDiameterMm.value,
      pendulumDepthMm: wheel.pendulumDepthMm.value,
      ...(stand.lineAbovePlateMm === null
        ? {}
        : { lineAbovePlateMm: stand.lineAbovePlateMm.value }),
    },
    camera: {
      downTiltDeg: downTiltDeg.value,
      ...(horizontalFovDeg === null ? {} : { horizontalFovDeg: horizontalFovDeg.value }),
    },
    sight: { valveMark: wheel.mark },
    weightStepG: wheel.weightStepG,
    ...(isCheck ? { after: { sweep: state.lastSweep!.id, added: [...state.addedSince] } } : {}),
  };
  return { setup, assumed: assumedPaths(wheel, stand) };
}

function assumedPaths(wheel: WheelRecord, stand: StandRecord): string[] {
  const origins = {
    'wheel.massKg': wheel.massKg.origin,
    'wheel.edgeRadiusMm': wheel.edgeRadiusMm.origin,
    'wheel.weightRadiusMm': wheel.rings[0]!.radiusMm.origin,
    'stand.ballDiameterMm': wheel.ballDiameterMm.origin,
    'stand.pendulumDepthMm': wheel.pendulumDepthMm.origin,
    'camera.downTiltDeg': stand.camera.downTiltDeg.origin,
  };
  return Object.entries(origins).flatMap(([path, origin]) => (origin === 'assumed' ? path : []));
}
