import type { SweepSetup } from '../contract/setup.ts';
import type { SightMemory } from '../contract/sweep.ts';

/**
 * Camera and edge as the last live sweep taught them, for the next look at the same wheel: the
 * hand is then led by the closed turn's scale, and a check sweep starts with a whole sweep's view.
 * Whether the camera has moved since is told by the pictures, in the measuring core.
 */
export interface SightKeeper {
  keep(setup: SweepSetup, sight: SightMemory | null): void;
  /** Null when nothing is known, or not of this wheel before this camera. */
  for(setup: SweepSetup): SightMemory | null;
}

export function createSightKeeper(): SightKeeper {
  let kept: { readonly about: string; readonly sight: SightMemory } | null = null;
  return {
    keep(setup, sight) {
      if (sight) kept = { about: whatItRestsOn(setup), sight };
    },
    for: (setup) => (kept?.about === whatItRestsOn(setup) ? kept.sight : null),
  };
}

/** Everything of a setup from which the camera was worked out. */
function whatItRestsOn({ wheel, stand, camera }: SweepSetup): string {
  return JSON.stringify([wheel.edgeRadiusMm, stand.lineAbovePlateMm ?? null, camera]);
}
