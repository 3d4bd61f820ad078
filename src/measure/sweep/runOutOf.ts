import { bandOffSquareSdMm, radialRunOutSdMm, runOutSdMm } from '../../balance/runOutAllowance.ts';
import type { WheelView } from './wheelView.ts';

/** Standard deviations of a component of the rise, mm. */
export interface RunOutSd {
  readonly lateralSdMm: number;
  readonly radialSdMm: number;
  /** Of a band that a hand stuck on; 0 where the tread tells it, or there is none. */
  readonly bandSdMm: number;
}

/** Run-out that one sweep cannot tell from an unbalance, as heights; κ as the mean over the blocks. */
export function runOutOf(
  { sightSlopes: slopes }: WheelView,
  onBandAlone: boolean,
): RunOutSd | null {
  const lateral = runOutSdMm();
  const radial = radialRunOutSdMm(slopes.reduce((sum, k) => sum + k, 0) / slopes.length);
  const bandSdMm = onBandAlone ? bandOffSquareSdMm() : 0;
  return lateral.ok && radial.ok
    ? { lateralSdMm: lateral.value, radialSdMm: radial.value, bandSdMm }
    : null;
}

/** All of it together, a component. */
export function wholeRunOutSdMm({ lateralSdMm, radialSdMm, bandSdMm }: RunOutSd): number {
  return Math.hypot(lateralSdMm, radialSdMm, bandSdMm);
}
