import { useEffect, useRef } from 'react';

import type { PracticeStand } from '../../session/practice/practiceStand.ts';
import { words } from '../words/words.ts';
import { useDragTurn } from './useDragTurn.ts';

/** The stand as its camera sees it; dragged, the wheel turns. */
export function StandPictureView({ stand }: { readonly stand: PracticeStand }) {
  const frame = useRef<HTMLDivElement>(null);
  const drag = useDragTurn(stand);
  useEffect(() => {
    const { canvas } = stand;
    frame.current?.append(canvas);
    stand.look(true);
    return () => {
      stand.look(false);
      canvas.remove();
    };
  }, [stand]);
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- turned by the arrow keys
    <div
      ref={frame}
      className="practice-picture"
      role="group"
      aria-label={words.practice.pictureOf}
      tabIndex={0}
      data-picture-by={stand.pictureBy}
      {...drag}
    />
  );
}
