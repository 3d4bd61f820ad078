import { succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { POSITIVE, rejectNumbers, type NumberRange } from './inputs.ts';

/** An elastic material; `Infinity` MPa stands for a rigid one. */
export interface Elastic {
  readonly elasticModulusMpa: number;
  readonly poissonRatio: number;
}

export interface HertzContact {
  readonly contactRadiusMm: number;
  /** Pressure in the middle, p₀. */
  readonly peakPressureMpa: number;
  /** How far the two come together, δ. */
  readonly approachMm: number;
}

export interface SphereOnFlat {
  readonly forceN: number;
  readonly sphereRadiusMm: number;
  readonly sphere: Elastic;
  readonly flat: Elastic;
}

/** Stable isotropic materials that are not auxetic. */
const POISSON: NumberRange = { low: 0, high: 0.5 };
const STIFFNESS_MPA: NumberRange = { low: 1e-6, high: Infinity };
/** Compliance taken for two rigid bodies, 1/MPa: stiffer than anything made. */
const COMPLIANCE_MIN = 1e-12;

/** E*: 1/E* = (1 − ν₁²)/E₁ + (1 − ν₂²)/E₂, MPa. */
export function contactModulusMpa(a: Elastic, b: Elastic): BalanceOutcome<number> {
  const bad = rejectNumbers({
    elasticModulusMpa: [a.elasticModulusMpa, STIFFNESS_MPA],
    poissonRatio: [a.poissonRatio, POISSON],
    otherElasticModulusMpa: [b.elasticModulusMpa, STIFFNESS_MPA],
    otherPoissonRatio: [b.poissonRatio, POISSON],
  });
  if (bad) return bad;
  const compliance =
    (1 - a.poissonRatio ** 2) / a.elasticModulusMpa +
    (1 - b.poissonRatio ** 2) / b.elasticModulusMpa;
  return succeeded(1 / Math.max(compliance, COMPLIANCE_MIN));
}

/**
 * Hertz contact of a sphere on a flat: a³ = 3FR/(4E*), p₀ = 3F/(2πa²) = (6FE*²/(π³R²))^⅓, δ = a²/R.
 * N, mm and MPa throughout. Source: H. Hertz 1881; formulas as in CHECKS, Contact.
 */
export function hertzContact(input: SphereOnFlat): BalanceOutcome<HertzContact> {
  const { forceN, sphereRadiusMm } = input;
  const bad = rejectNumbers({
    forceN: [forceN, POSITIVE],
    sphereRadiusMm: [sphereRadiusMm, POSITIVE],
  });
  if (bad) return bad;
  const modulus = contactModulusMpa(input.sphere, input.flat);
  if (!modulus.ok) return modulus;
  const contactRadiusMm = Math.cbrt((3 * forceN * sphereRadiusMm) / (4 * modulus.value));
  return succeeded({
    contactRadiusMm,
    peakPressureMpa: (3 * forceN) / (2 * Math.PI * contactRadiusMm ** 2),
    approachMm: contactRadiusMm ** 2 / sphereRadiusMm,
  });
}

/** Load at which the peak pressure reaches `pressureMpa`: F = π³R²p³/(6E*²), N. */
export function loadAtPressureN(input: {
  readonly pressureMpa: number;
  readonly sphereRadiusMm: number;
  readonly sphere: Elastic;
  readonly flat: Elastic;
}): BalanceOutcome<number> {
  const { pressureMpa, sphereRadiusMm } = input;
  const bad = rejectNumbers({
    pressureMpa: [pressureMpa, POSITIVE],
    sphereRadiusMm: [sphereRadiusMm, POSITIVE],
  });
  if (bad) return bad;
  const modulus = contactModulusMpa(input.sphere, input.flat);
  if (!modulus.ok) return modulus;
  return succeeded(
    (Math.PI ** 3 * sphereRadiusMm ** 2 * pressureMpa ** 3) / (6 * modulus.value ** 2),
  );
}
