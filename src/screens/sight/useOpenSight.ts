import { useCallback, useEffect, useRef } from 'react';

import type { AcceptedReading } from '../../contract/reading.ts';
import type { KeptSightTests } from '../../contract/logbook.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { useApp } from '../shell/appContext.ts';
import { prepareCamera } from './cameraMemory.ts';
import { useCameraLeave, type CameraLeave } from './useCameraLeave.ts';

/** What is needed to put a camera on a wheel. */
export interface SightWish {
  readonly wheelId: string;
  readonly setup: SweepSetup;
  readonly assumed: readonly string[];
  readonly earlier: AcceptedReading | null;
  readonly deviceId: string | null;
  /** The stand's trials by hand. */
  readonly tested: KeptSightTests | null;
}

export interface SightOpening {
  /** The way to open it again. */
  readonly open: () => void;
  readonly leave: CameraLeave;
}

/**
 * Opens the camera when the screen comes up, once it has been explained where the browser would ask for
 * it, and another one when that is chosen, unless it stands there that something went wrong with it;
 * lets it go when the screen is left other than for the sweep.
 */
export function useOpenSight(wish: SightWish | null): SightOpening {
  const { session } = useApp();
  const leave = useCameraLeave();
  const latest = useRef(wish);
  latest.current = wish;
  const open = useCallback(() => {
    if (latest.current === null) return;
    const { wheelId, setup, assumed, earlier, deviceId, tested } = latest.current;
    void session.openSight(setup, {
      errand: { wheelId, assumed },
      prepare: prepareCamera,
      ...(earlier === null ? {} : { earlier }),
      ...(deviceId === null ? {} : { deviceId }),
      ...(tested === null ? {} : { tested }),
    });
  }, [session]);
  const isReady = wish !== null && leave.stage === 'open';
  const deviceId = wish?.deviceId ?? null;
  const opened = useRef<string | null | undefined>(undefined);
  useEffect(() => {
    if (!isReady) return;
    const isOther = opened.current !== undefined && opened.current !== deviceId;
    opened.current = deviceId;
    const state = session.getState();
    if (isOther || state.phase !== 'choosing' || state.problem === null) open();
    return () => session.leaveCamera();
  }, [session, open, isReady, deviceId]);
  return { open, leave };
}
