import { useEffect } from 'react';

import type { SightingState } from '../../contract/session.ts';
import { cameraOf, testsBefore } from '../../session/signKeeper.ts';
import { useApp } from '../shell/appContext.ts';
import { useStand } from '../shell/useLogbook.ts';

/** What was tried by hand belongs to the stand: it is kept there, and forgotten when it is void. */
export function useKeptTests({ setup, stream, source }: SightingState): void {
  const { logbook } = useApp();
  const stand = useStand();
  const { up, turn } = setup.sight.tested ?? {};
  useEffect(() => {
    if (!stand?.ok || source !== 'camera') return;
    const { camera: settings } = stand.value;
    const camera = cameraOf(stream);
    const kept = testsBefore(camera, settings.tested ?? null) ?? {};
    if (kept.up === up && kept.turn === turn) return;
    const tested = { camera, ...(up && { up }), ...(turn && { turn }) };
    void logbook.saveStand({ ...stand.value, camera: { ...settings, tested } });
  }, [logbook, stand, source, stream, up, turn]);
}
