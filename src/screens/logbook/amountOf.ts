import type { SweepEntry } from '../../contract/logbook.ts';

export interface SweepAmount {
  /** At the sweep's weight radius, g, and its 95 % half width. */
  readonly amountG: number;
  readonly plusMinusG: number;
  readonly lightSpotDeg: number;
}

/** The figures of a sweep for lists and drawings; null for one without. */
export function amountOf({ reading, setup }: SweepEntry): SweepAmount | null {
  if (reading.status !== 'ok') return null;
  const { amountGmm, lightSpotDeg, ci95 } = reading.unbalance;
  const radiusMm = setup.wheel.weightRadiusMm;
  const [low, high] = ci95.amountGmm;
  return {
    amountG: amountGmm / radiusMm,
    plusMinusG: Math.max(high - amountGmm, amountGmm - low) / radiusMm,
    lightSpotDeg,
  };
}
