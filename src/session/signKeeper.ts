import type { KeptSightTests } from '../contract/logbook.ts';
import type { SightTests, SweepSetup } from '../contract/setup.ts';

/**
 * What was tried by hand before a camera, for as long as the page is open: the next wheel before the
 * same camera need not be pressed again.
 */
export interface SignKeeper {
  keep(stream: MediaStream, tests: SightTests): void;
  /**
   * What was tried before this camera here, else what the stand has kept of it from another day;
   * empty when nothing was.
   */
  for(stream: MediaStream, ofStand: KeptSightTests | null): SightTests;
}

export function createSignKeeper(): SignKeeper {
  let kept: KeptSightTests | null = null;
  return {
    keep(stream, tests) {
      kept = { ...tests, camera: cameraOf(stream) };
    },
    for(stream, ofStand) {
      const camera = cameraOf(stream);
      return testsBefore(camera, kept) ?? testsBefore(camera, ofStand) ?? {};
    },
  };
}

/** Null when they are another camera's. */
export function testsBefore(camera: string, kept: KeptSightTests | null): SightTests | null {
  if (kept?.camera !== camera) return null;
  const { camera: _, ...tests } = kept;
  return tests;
}

export function withTests(setup: SweepSetup, tests: SightTests): SweepSetup {
  const { tested: _, ...sight } = setup.sight;
  const isAny = tests.up !== undefined || tests.turn !== undefined;
  return { ...setup, sight: isAny ? { ...sight, tested: tests } : sight };
}

/** Device and name of a camera: some browsers give a device another number on another day. */
export function cameraOf(stream: MediaStream): string {
  const [track] = stream.getVideoTracks();
  return JSON.stringify([track?.getSettings().deviceId, track?.label]);
}
