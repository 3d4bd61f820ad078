import { useEffect, useState } from 'react';

import { words } from '../words/words.ts';
import { useDragTurn } from './useDragTurn.ts';
import { usePracticeRoom } from './usePracticeRoom.ts';
import './practice.css';

/** How often the button looks whether the hand is still turning, ms. */
const LOOK_MS = 500;

/**
 * What a hand does at the practice wheel: a strip to drag, and buttons for those who cannot. While it
 * is swept (`isSwept`) turning is the thing to do, and the rim is let alone.
 */
export default function PracticeHand({ isSwept = false }: { readonly isSwept?: boolean }) {
  const { stand } = usePracticeRoom();
  const drag = useDragTurn(stand);
  const [holds, setHolds] = useState(false);
  const [turning, setTurning] = useState(stand.isTurning());
  useEffect(() => {
    const timer = setInterval(() => setTurning(stand.isTurning()), LOOK_MS);
    return () => clearInterval(timer);
  }, [stand]);
  const hold = (on: boolean) => {
    stand.hold(on);
    setHolds(on);
  };
  const turnOrStop = () => {
    hold(false);
    if (turning) stand.release();
    else stand.turnForMe();
    setTurning(!turning);
  };
  const press = (on: boolean) => stand.press(on);
  return (
    <div className="practice-hand">
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- turned by the arrow keys */}
      <div
        className="practice-strip"
        role="group"
        aria-label={words.practice.strip}
        tabIndex={0}
        {...drag}
      >
        <span aria-hidden="true">{words.practice.strip}</span>
      </div>
      <button
        type="button"
        className={isSwept && !turning ? 'main' : 'plain'}
        data-role="turn-for-me"
        onClick={turnOrStop}
      >
        {turning ? words.practice.turning : words.practice.turnForMe}
      </button>
      <button type="button" className="plain" aria-pressed={holds} onClick={() => hold(!holds)}>
        {holds ? words.practice.letGo : words.practice.hold}
      </button>
      {!isSwept && (
        <button
          type="button"
          className="plain"
          onPointerDown={() => press(true)}
          onPointerUp={() => press(false)}
          onPointerLeave={() => press(false)}
          onKeyDown={(event) => event.key === ' ' && press(true)}
          onKeyUp={() => press(false)}
          onBlur={() => press(false)}
        >
          {words.practice.press}
        </button>
      )}
    </div>
  );
}
