import { useEffect, useRef } from 'react';

import type { PracticeStand } from '../../session/practice/practiceStand.ts';
import { words } from '../words/words.ts';
import { useDragTurn } from './useDragTurn.ts';

/** The stand as its camera sees it; dragged, the wheel turns. */
export function StandPictureView({ stand }: { readonly stand: PracticeStand }) {
  const video = useRef<HTMLVideoElement>(null);
  const drag = useDragTurn(stand);
  useEffect(() => {
    const element = video.current;
    if (element === null) return;
    element.srcObject = stand.stream;
    return () => {
      element.srcObject = null;
    };
  }, [stand]);
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- turned by the arrow keys
    <div
      className="practice-picture"
      role="group"
      aria-label={words.practice.pictureOf}
      tabIndex={0}
      {...drag}
    >
      <video
        ref={video}
        autoPlay
        muted
        playsInline
        aria-hidden="true"
        style={{ aspectRatio: stand.shape }}
        data-picture-by={stand.pictureBy}
      />
    </div>
  );
}
