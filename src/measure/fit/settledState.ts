import type { BinVerdicts, PlaneSeries } from './planeSeries.ts';
import type { RockingEstimate } from './rockingEstimate.ts';

/** The random motion, the weights of the bins and the knocks, found in turns. */
export interface SettledMotion {
  readonly estimate: RockingEstimate;
  readonly verdicts: BinVerdicts;
  /** Noise common to all azimuths of a bin, mm, before the plane scale is applied. */
  readonly offsetSdMm: number;
  /** What the search ran on. */
  readonly coarse: PlaneSeries;
}
