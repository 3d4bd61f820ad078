import { radialRunOutSdMm, runOutSdMm } from '../../balance/runOutAllowance.ts';
import type { WheelView } from './wheelView.ts';

/** Standard deviations of a component of the rise, mm. */
export interface RunOutSd {
  readonly lateralSdMm: number;
  readonly radialSdMm: number;
}

/** Run-out that one sweep cannot tell from an unbalance, as heights; κ as the mean over the blocks. */
export function runOutOf({ sightSlopes: slopes }: WheelView): RunOutSd | null {
  const lateral = runOutSdMm();
  const radial = radialRunOutSdMm(slopes.reduce((sum, k) => sum + k, 0) / slopes.length);
  return lateral.ok && radial.ok ? { lateralSdMm: lateral.value, radialSdMm: radial.value } : null;
}
