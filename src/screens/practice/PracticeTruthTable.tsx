import { useEffect, useRef } from 'react';

import { wrapTurnDeg } from '../../quantities/angle.ts';
import type { PracticeState } from '../../session/practice/practiceRoom.ts';
import { readingSummary } from '../read/readingSummary.ts';
import { formatClockAndDeg, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { readingAsItCame } from './readingAsItCame.ts';

/** A light spot, and the weight that it wants, by one who says so. */
interface Said {
  readonly who: string;
  readonly massG: number;
  /** Null when none was told from the others. */
  readonly lightDeg: number | null;
  /** What is left with the weights that are on. */
  readonly isLeft?: boolean;
}

/** The truth, once it is asked for, beside the guess by eye and what the tool read. */
export function PracticeTruthTable({
  state,
  units,
}: {
  readonly state: PracticeState;
  readonly units: Units;
}) {
  const shown = useRef<HTMLElement>(null);
  // Asked for by a button that may stand a screen lower.
  useEffect(() => shown.current?.scrollIntoView({ block: 'nearest' }), []);
  return (
    <section ref={shown} className="group" data-role="practice-truth">
      <h2>{words.practice.truth}</h2>
      <table className="practice-truth">
        <thead>
          <tr>
            <td />
            <th scope="col">{words.practice.lightAt}</th>
            <th scope="col">{words.practice.wants}</th>
          </tr>
        </thead>
        <tbody>
          {whatWasSaid(state).map(({ who, massG, lightDeg, isLeft }) => (
            <tr key={who} {...(isLeft ? { 'data-left-g': massG.toFixed(2) } : {})}>
              <th scope="row">{who}</th>
              <td>{lightDeg === null ? '–' : formatClockAndDeg(lightDeg)}</td>
              <td>{formatMass(massG, units).text}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function whatWasSaid(state: PracticeState): Said[] {
  const { stand, guess } = state;
  const { weightRadiusMm } = stand.setup.wheel;
  const { hidden, left } = stand.truth();
  const spot = ({ amountGmm, heavySpotDeg }: typeof left) => ({
    massG: amountGmm / weightRadiusMm,
    lightDeg: wrapTurnDeg(heavySpotDeg + 180),
  });
  const said: Said[] = [{ who: words.practice.hidden, ...spot(hidden) }];
  if (guess !== null) {
    said.push({ who: words.practice.yourGuess, massG: guess.massG, lightDeg: guess.lightSpotDeg });
  }
  const first = readingAsItCame(state);
  if (first !== null) {
    const { amountG, spots } = readingSummary(first, stand.setup);
    said.push({ who: words.practice.toolRead, massG: amountG, lightDeg: spots?.lightDeg ?? null });
  }
  return [...said, { who: words.practice.left, ...spot(left), isLeft: true }];
}
