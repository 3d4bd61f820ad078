import { useEffect, useState } from 'react';

import { cameraWillBeAsked } from '../../session/cameraLeave.ts';
import { readBoolean, usePreference } from '../state/preference.ts';

export interface CameraLeave {
  /**
   * `explain` while the person has not been told what the camera is for and the browser would ask
   * whether it may be opened; `unknown` until that has been found out.
   */
  readonly stage: 'unknown' | 'explain' | 'open';
  /** They have been told; not told again on this device. */
  readonly understood: () => void;
}

/** A browser's question comes out of nowhere: what it is about is said before it is asked. */
export function useCameraLeave(): CameraLeave {
  const [isExplained, setExplained] = usePreference('cameraExplained', false, readBoolean);
  const [isAsked, setAsked] = useState<boolean | null>(null);
  useEffect(() => {
    let isOver = false;
    void cameraWillBeAsked().then((asked) => {
      if (!isOver) setAsked(asked);
    });
    return () => {
      isOver = true;
    };
  }, []);
  const understood = () => setExplained(true);
  if (isExplained || isAsked === false) return { stage: 'open', understood };
  return { stage: isAsked === null ? 'unknown' : 'explain', understood };
}
