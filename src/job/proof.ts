import type { StandRecord, WheelRecord } from '../contract/logbook.ts';
import { edgeWaveFromFit } from '../balance/edgeWave.ts';
import { PLATE_MATERIALS } from '../balance/plateMaterials.ts';
import { checkPlate } from '../balance/plateCheck.ts';
import { residualMeaning, type ResidualMeaning } from '../balance/residualMeaning.ts';
import { CAR_WHEEL_GRADE_MM_PER_S, permissibleUnbalanceGmm } from '../balance/tolerance.ts';
import { verdictOn, type Verdict } from '../balance/verdict.ts';
import { succeeded, type Outcome } from '../contract/outcome.ts';
import { vectorFromPolar } from '../quantities/vector.ts';
import { largestSdGmm } from './amountSd.ts';
import type { SweepPair } from './sweepPair.ts';

/** Road speed at which a force is named: the one at which shaking is commonly felt, km/h. */
export const NAMED_ROAD_SPEED_KMH = 130;

/** What a sweep proves: what is left, what that means on the road, and the verdict. */
export interface Proof {
  readonly meaning: ResidualMeaning;
  readonly verdict: Verdict;
  readonly permissibleGmm: number;
  readonly oneStepGmm: number;
}

/**
 * Both measures, the trade's one weight step (common practice) and ISO 21940-11 at G 40, at the
 * named road speed. The tyre's overall diameter is taken as twice the edge's radius: the edge sits
 * on the tread's shoulder, a few per cent inside, which the grade does not feel.
 */
export function proofOf(
  pair: SweepPair,
  wheel: Pick<WheelRecord, 'weightStepG'>,
  stand: Pick<StandRecord, 'plateMaterial'>,
): Outcome<Proof> {
  const { reading, setup, trace } = pair.after;
  const { massKg, weightRadiusMm, edgeRadiusMm } = setup.wheel;
  const { amountGmm, heavySpotDeg } = reading.unbalance;
  const meaning = residualMeaning({
    residualGmm: vectorFromPolar(amountGmm, heavySpotDeg),
    weightRadiusMm,
    massKg,
    roadSpeedKmh: NAMED_ROAD_SPEED_KMH,
    overallDiameterMm: 2 * edgeRadiusMm,
  });
  if (!meaning.ok) return meaning;
  const permissible = permissibleUnbalanceGmm({
    gradeMmPerS: CAR_WHEEL_GRADE_MM_PER_S,
    massKg,
    speedPerMin: meaning.value.speedPerMin,
  });
  if (!permissible.ok) return permissible;
  const wave = trace === null ? null : edgeWaveFromFit(trace.fit.cosMm, trace.fit.sinMm);
  const verdict = verdictOn({
    residualGmm: amountGmm,
    residualSdGmm: largestSdGmm(reading),
    permissibleGmm: permissible.value,
    weightStepG: wheel.weightStepG,
    weightRadiusMm,
    trimsDone: Math.max(0, pair.trims - 1),
    edgeWaveMm: wave?.ok ? wave.value.peakToPeakMm : 0,
    seatErrorGmm: 0,
    plateDents: plateDents(massKg, setup.stand.ballDiameterMm, stand),
  });
  if (!verdict.ok) return verdict;
  return succeeded({
    meaning: meaning.value,
    verdict: verdict.value,
    permissibleGmm: permissible.value,
    oneStepGmm: wheel.weightStepG * weightRadiusMm,
  });
}

function plateDents(
  massKg: number,
  ballDiameterMm: number,
  { plateMaterial }: Pick<StandRecord, 'plateMaterial'>,
): boolean {
  if (plateMaterial === null) return false;
  const check = checkPlate({ massKg, ballDiameterMm, plate: PLATE_MATERIALS[plateMaterial] });
  return check.ok && check.value.finding === 'dents';
}
