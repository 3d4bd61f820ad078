import { evenCovariance } from '../../balance/planeCovariance.ts';
import { modelResponse } from '../../balance/response.ts';
import { unbalanceFromRise, type Unbalance } from '../../balance/unbalance.ts';
import type { RunningTiltNow } from '../fit/runningTilt.ts';
import { runOutOf, wholeRunOutSdMm } from './runOutOf.ts';
import type { WheelView } from './wheelView.ts';

/** What a reading by formula made of the running tilt would say; null where it would be refused. */
export function worthNow(
  view: WheelView,
  { tiltMm, tiltSdMm }: RunningTiltNow,
  onBandAlone: boolean,
): Unbalance | null {
  const { wheel, stand } = view.setup;
  const response = modelResponse({ ...wheel, ...stand });
  const runOut = runOutOf(view, onBandAlone);
  if (!response.ok || !runOut) return null;
  const unbalance = unbalanceFromRise({
    rise: { riseMm: tiltMm, covarianceMm2: evenCovariance(tiltSdMm ** 2) },
    response: response.value,
    runOutSdMm: wholeRunOutSdMm(runOut),
  });
  return unbalance.ok ? unbalance.value : null;
}
