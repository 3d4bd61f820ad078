import type { Elastic } from './hertz.ts';

/** How a plate gives way: metals yield and keep a dent, glass and stone crack round the contact. */
export interface PlateMaterial extends Elastic {
  readonly label: string;
  readonly kind: 'yields' | 'cracks';
  /** Yield strength σ_y of a metal, tensile strength of a brittle plate, MPa. */
  readonly strengthMpa: number;
}

/** The ball: hardened bearing steel (E 207 GPa, ν 0.3; handbook, from memory). */
export const BEARING_STEEL_BALL: Elastic = { elasticModulusMpa: 207000, poissonRatio: 0.3 };

/**
 * Plates a shed may have. 6061-T6 and A36 as read in handbooks (CHECKS, Contact); hardened bearing
 * steel, soft aluminium, glass and granite from memory, the last two on the cautious side, since
 * their strength scatters.
 */
export const PLATE_MATERIALS = {
  'hard-steel': {
    label: 'hardened steel',
    kind: 'yields',
    elasticModulusMpa: 207000,
    poissonRatio: 0.3,
    strengthMpa: 2000,
  },
  'mild-steel': {
    label: 'mild steel',
    kind: 'yields',
    elasticModulusMpa: 200000,
    poissonRatio: 0.3,
    strengthMpa: 250,
  },
  'hard-aluminium': {
    label: 'aluminium 6061-T6',
    kind: 'yields',
    elasticModulusMpa: 69000,
    poissonRatio: 0.33,
    strengthMpa: 276,
  },
  'soft-aluminium': {
    label: 'soft aluminium',
    kind: 'yields',
    elasticModulusMpa: 69000,
    poissonRatio: 0.33,
    strengthMpa: 60,
  },
  glass: {
    label: 'window glass',
    kind: 'cracks',
    elasticModulusMpa: 70000,
    poissonRatio: 0.22,
    strengthMpa: 50,
  },
  granite: {
    label: 'granite',
    kind: 'cracks',
    elasticModulusMpa: 55000,
    poissonRatio: 0.25,
    strengthMpa: 12,
  },
} as const satisfies Record<string, PlateMaterial>;

export type PlateMaterialName = keyof typeof PLATE_MATERIALS;
