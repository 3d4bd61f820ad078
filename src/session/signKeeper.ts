import type { SightTests, SweepSetup } from '../contract/setup.ts';

/**
 * What was tried by hand before a camera, for as long as the page is open: the next wheel before the
 * same camera need not be pressed again.
 */
export interface SignKeeper {
  keep(stream: MediaStream, tests: SightTests): void;
  /** Empty when nothing was tried before this camera. */
  for(stream: MediaStream): SightTests;
}

export function createSignKeeper(): SignKeeper {
  let kept: { readonly camera: string; readonly tests: SightTests } | null = null;
  return {
    keep(stream, tests) {
      kept = { camera: cameraOf(stream), tests };
    },
    for: (stream) => (kept?.camera === cameraOf(stream) ? kept.tests : {}),
  };
}

export function withTests(setup: SweepSetup, tests: SightTests): SweepSetup {
  const { tested: _, ...sight } = setup.sight;
  const isAny = tests.up !== undefined || tests.turn !== undefined;
  return { ...setup, sight: isAny ? { ...sight, tested: tests } : sight };
}

function cameraOf(stream: MediaStream): string {
  const [track] = stream.getVideoTracks();
  return JSON.stringify([track?.getSettings().deviceId, track?.label]);
}
