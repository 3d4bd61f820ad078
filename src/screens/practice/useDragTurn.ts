import { useRef, type KeyboardEvent, type PointerEvent } from 'react';

import type { PracticeStand } from '../../session/practice/practiceStand.ts';

/** Degrees of turn for a drag across the whole width: the tread follows the finger at the sight. */
const DEG_PER_WIDTH = 115;
/** One press of an arrow key, degrees. */
const KEY_DEG = 2;
/** The hand lets go of the wheel so long after the last press of a key, ms. */
const KEY_HAND_MS = 400;

/**
 * Turns the practice wheel by finger, mouse or arrow keys. The near side of the wheel goes with the
 * hand: to the left is clockwise seen from above.
 */
export function useDragTurn(stand: PracticeStand) {
  const lastX = useRef<number | null>(null);
  const letGo = useRef(0);
  return {
    onPointerDown(event: PointerEvent<HTMLElement>) {
      event.currentTarget.setPointerCapture(event.pointerId);
      lastX.current = event.clientX;
      stand.turnBy(0);
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      if (lastX.current === null) return;
      const widthPx = event.currentTarget.clientWidth;
      stand.turnBy((-(event.clientX - lastX.current) / widthPx) * DEG_PER_WIDTH);
      lastX.current = event.clientX;
    },
    onPointerUp() {
      lastX.current = null;
      stand.release();
    },
    onPointerCancel() {
      lastX.current = null;
      stand.release();
    },
    onKeyDown(event: KeyboardEvent<HTMLElement>) {
      if (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight') return;
      event.preventDefault();
      stand.turnBy(event.key === 'ArrowLeft' ? KEY_DEG : -KEY_DEG);
      clearTimeout(letGo.current);
      letGo.current = window.setTimeout(() => stand.release(), KEY_HAND_MS);
    },
  };
}
