import { succeeded } from '../contract/outcome.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../quantities/units.ts';
import type { BalanceOutcome } from './failures.ts';
import { hertzContact, loadAtPressureN, type HertzContact } from './hertz.ts';
import { POSITIVE, rejectNumbers } from './inputs.ts';
import { BEARING_STEEL_BALL, type PlateMaterial } from './plateMaterials.ts';

export type PlateFinding = 'sound' | 'marginal' | 'dents' | 'may-crack';

export interface PlateCheck {
  readonly contact: HertzContact;
  /** Peak pressure at which damage begins, MPa, and the load that makes it, N. */
  readonly limitPressureMpa: number;
  readonly limitLoadN: number;
  /** Limit over actual peak pressure; under 1 the plate is damaged. */
  readonly margin: number;
  readonly finding: PlateFinding;
  readonly words: string;
}

/** Yield begins under a sphere at p₀ = 1.60·σ_y (K. L. Johnson, Contact Mechanics; from memory). */
const YIELD_PRESSURE_SHARE = 1.6;
/** Strengths scatter, and a wheel is set down, not laid down: under this margin it is a matter of luck. */
const SAFE_MARGIN = 1.25;

const WORDS: Readonly<Record<PlateFinding, string>> = {
  sound: 'The plate bears the wheel without a mark.',
  marginal: 'The plate just bears the wheel: set it down gently and look for marks now and then.',
  dents:
    'The ball leaves a dent in this plate, and the wheel will stick in it. Use a harder plate.',
  'may-crack': 'This plate may crack under the ball. Use a hard steel plate.',
};

/**
 * Does the plate bear the wheel on this ball: Hertz peak pressure under the wheel's weight against
 * 1.60·σ_y for metals, and, for brittle plates, the tension at the contact's rim,
 * (1 − 2ν)/3·p₀, against the tensile strength. Source: Johnson, Contact Mechanics (from memory).
 */
export function checkPlate(input: {
  readonly massKg: number;
  readonly ballDiameterMm: number;
  readonly plate: PlateMaterial;
}): BalanceOutcome<PlateCheck> {
  const { massKg, ballDiameterMm, plate } = input;
  const bad = rejectNumbers({
    massKg: [massKg, POSITIVE],
    ballDiameterMm: [ballDiameterMm, POSITIVE],
    strengthMpa: [plate.strengthMpa, POSITIVE],
  });
  if (bad) return bad;
  const pair = { sphereRadiusMm: ballDiameterMm / 2, sphere: BEARING_STEEL_BALL, flat: plate };
  const contact = hertzContact({ ...pair, forceN: massKg * STANDARD_GRAVITY_M_PER_S2 });
  if (!contact.ok) return contact;
  const limitPressureMpa = limitPressure(plate);
  const load = loadAtPressureN({ ...pair, pressureMpa: limitPressureMpa });
  if (!load.ok) return load;
  const margin = limitPressureMpa / contact.value.peakPressureMpa;
  const finding = findingOf(margin, plate.kind);
  return succeeded({
    contact: contact.value,
    limitPressureMpa,
    limitLoadN: load.value,
    margin,
    finding,
    words: WORDS[finding],
  });
}

/** A Poisson ratio near one half makes no rim tension at all: kept from dividing by nothing. */
const RIM_SHARE_MIN = 1e-3;

function limitPressure(plate: PlateMaterial): number {
  if (plate.kind === 'yields') return YIELD_PRESSURE_SHARE * plate.strengthMpa;
  return plate.strengthMpa / Math.max((1 - 2 * plate.poissonRatio) / 3, RIM_SHARE_MIN);
}

function findingOf(margin: number, kind: PlateMaterial['kind']): PlateFinding {
  if (margin >= SAFE_MARGIN) return 'sound';
  if (margin >= 1) return 'marginal';
  return kind === 'yields' ? 'dents' : 'may-crack';
}
