import { eyeHabit } from '../../balance/byEye.ts';
import type { EyePair } from '../../job/eyePairs.ts';
import { formatDeg, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { angleOff, massOff } from './eyeDifference.ts';

/** Bias and scatter of the eye, as soon as there is one reading to hold against a sweep. */
export function EyeHabitView({
  pairs,
  units,
}: {
  readonly pairs: readonly EyePair[];
  readonly units: Units;
}) {
  const habit = eyeHabit(pairs.map(({ comparison }) => comparison));
  if (!habit.ok) return null;
  const { readings, massBiasG, massScatterG, angleBiasDeg, angleScatterDeg } = habit.value;
  const scatter = (text: string | null) =>
    text === null ? '' : `; ${words.byEye.habitScatter(text)}`;
  return (
    <section className="eye-habit" aria-labelledby="eye-habit-title">
      <h2 id="eye-habit-title">
        {words.byEye.habitTitle} <small>{words.byEye.habitText(readings)}</small>
      </h2>
      <dl className="eye-compared">
        <div>
          <dt>{words.byEye.habitMass}</dt>
          <dd>
            {massOff(massBiasG, units)}
            {scatter(massScatterG === null ? null : formatMass(massScatterG, units).text)}
          </dd>
        </div>
        <div>
          <dt>{words.byEye.habitAngle}</dt>
          <dd>
            {angleOff(angleBiasDeg)}
            {scatter(angleScatterDeg === null ? null : formatDeg(angleScatterDeg))}
          </dd>
        </div>
      </dl>
    </section>
  );
}
