import { useId, useState, type FormEvent } from 'react';

import type { StandRecord } from '../../contract/logbook.ts';
import { ballDiameterFromText } from '../../balance/ballDiameter.ts';
import { MinusIcon, PlusIcon } from '../parts/icons.tsx';
import { OriginMark } from '../parts/OriginMark.tsx';
import { formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { WHEEL_RANGES } from './ranges.ts';
import type { StandEdit } from './useStandEdit.ts';

export interface StandPartProps {
  readonly stand: StandRecord;
  readonly units: Units;
  readonly edit: StandEdit;
}

/** The largest ball is drawn this high; the others to the same scale, px. */
const LARGEST_BALL_PX = 60;

/** Balls on hand as rows, each drawn to scale; a new one is written as people write it. */
export function BallStock({ stand, units, edit }: StandPartProps) {
  const balls = stand.ballDiametersMm;
  const largestMm = Math.max(...balls.map(({ value }) => value));
  const sorted = balls.toSorted((a, b) => a.value - b.value);
  const remove = (diameterMm: number, name: string) =>
    edit.keepWithUndo(
      { ...stand, ballDiametersMm: balls.filter(({ value }) => value !== diameterMm) },
      stand,
      words.stand.removed(name),
    );
  return (
    <section className="group">
      <h2>{words.stand.groups.balls}</h2>
      <ul className="stand-rows">
        {sorted.map((ball) => {
          const name = formatKnown('length', ball.value, units);
          return (
            <li key={ball.value} className="stand-row">
              <BallSign sizePx={(LARGEST_BALL_PX * ball.value) / largestMm} />
              <strong className="stand-row-name">{name}</strong>
              <OriginMark
                origin={ball.origin}
                name={name}
                onOrigin={(origin) =>
                  edit.keep({
                    ...stand,
                    ballDiametersMm: balls.map((one) => (one === ball ? { ...one, origin } : one)),
                  })
                }
              />
              <button
                type="button"
                className="stepper-press"
                aria-label={words.stand.removeBall(name)}
                onClick={() => remove(ball.value, name)}
              >
                <MinusIcon />
              </button>
            </li>
          );
        })}
      </ul>
      <NewBall
        onBall={(value) => {
          const others = balls.filter((ball) => ball.value !== value);
          const ballDiametersMm = [...others, { value, origin: 'entered' as const }];
          edit.keep({ ...stand, ballDiametersMm });
        }}
      />
    </section>
  );
}

function NewBall({ onBall }: { readonly onBall: (diameterMm: number) => void }) {
  const id = useId();
  const [text, setText] = useState('');
  const [isUnread, setUnread] = useState(false);
  const add = (event: FormEvent) => {
    event.preventDefault();
    const diameter = ballDiameterFromText(text);
    const [low, high] = WHEEL_RANGES.ballDiameterMm;
    const fits = diameter.ok && diameter.value >= low && diameter.value <= high;
    setUnread(!fits);
    if (!fits) return;
    onBall(Math.round(diameter.value * 1000) / 1000);
    setText('');
  };
  const { stand } = words;
  return (
    <form className="stepper" data-problem={isUnread} onSubmit={add}>
      <label htmlFor={id}>{stand.addBall}</label>
      <div className="stepper-line">
        <input
          id={id}
          name="newBall"
          className="text-box stand-new"
          type="text"
          autoComplete="off"
          value={text}
          aria-invalid={isUnread}
          aria-describedby={`${id}-help`}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <button type="submit" className="plain">
          <PlusIcon />
          {stand.add}
        </button>
      </div>
      {isUnread && (
        <p className="stepper-problem" role="alert">
          {stand.addBallProblem}
        </p>
      )}
      <p id={`${id}-help`} className="stepper-help">
        {stand.addBallHelp}
      </p>
    </form>
  );
}

function BallSign({ sizePx }: { readonly sizePx: number }) {
  const r = sizePx / 2;
  return (
    <svg
      className="ball-sign"
      viewBox={`${-LARGEST_BALL_PX / 2 - 2} ${-LARGEST_BALL_PX - 2} ${LARGEST_BALL_PX + 4} ${LARGEST_BALL_PX + 6}`}
      aria-hidden="true"
      focusable="false"
    >
      <circle className="seat-ball" cy={-r} r={r} />
      <path className="seat-cross" d={`M${-LARGEST_BALL_PX / 2} 1 H${LARGEST_BALL_PX / 2}`} />
    </svg>
  );
}
