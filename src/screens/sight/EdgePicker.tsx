import { useState, type KeyboardEvent, type MouseEvent } from 'react';

import { words } from '../words/words.ts';

/** A place in the picture as shares of its width and height, 0 to 1. */
export interface PictureShare {
  readonly x: number;
  readonly y: number;
}

/** A press of an arrow key moves the cross by this share of the picture: some 7 px of 720. */
const KEY_STEP = 0.01;
const STEPS: Readonly<Record<string, PictureShare>> = {
  ArrowLeft: { x: -KEY_STEP, y: 0 },
  ArrowRight: { x: KEY_STEP, y: 0 },
  ArrowUp: { x: 0, y: -KEY_STEP },
  ArrowDown: { x: 0, y: KEY_STEP },
};
const MIDDLE: PictureShare = { x: 0.5, y: 0.5 };

/** Lies over the picture: a touch chooses the edge there; keys move a cross and choose at it. */
export function EdgePicker({ onPick }: { readonly onPick: (place: PictureShare) => void }) {
  const [cross, setCross] = useState<PictureShare | null>(null);
  const move = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    setCross((at) => moved(at ?? MIDDLE, step.x, step.y));
  };
  const pick = (event: MouseEvent<HTMLButtonElement>) => {
    // A key's click carries no place: it means the cross.
    if (event.detail === 0) return onPick(cross ?? MIDDLE);
    const box = event.currentTarget.getBoundingClientRect();
    onPick(
      moved(
        { x: 0, y: 0 },
        (event.clientX - box.left) / box.width,
        (event.clientY - box.top) / box.height,
      ),
    );
  };
  return (
    <button
      type="button"
      className="edge-picker"
      aria-label={words.sight.pickEdge}
      onKeyDown={move}
      onClick={pick}
      onBlur={() => setCross(null)}
    >
      {cross !== null && (
        <svg
          viewBox="-20 -20 40 40"
          style={{ left: `${cross.x * 100}%`, top: `${cross.y * 100}%` }}
          aria-hidden="true"
        >
          <path d="M-18 0 H18 M0 -18 V18" />
        </svg>
      )}
    </button>
  );
}

function moved(from: PictureShare, x: number, y: number): PictureShare {
  const within = (share: number) => Math.min(1, Math.max(0, share));
  return { x: within(from.x + x), y: within(from.y + y) };
}
