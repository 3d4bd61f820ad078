import { Link } from 'wouter';

import type { Outcome } from '../../contract/outcome.ts';
import type { PlanTrouble, WeightPlan } from '../../job/weightPlan.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { places } from '../shell/places.ts';
import { knownFigure, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { PlaceList } from './PlaceList.tsx';

export interface PlanSayProps {
  readonly plan: Outcome<WeightPlan, PlanTrouble>;
  /** What will be left, as a sentence. */
  readonly left: string;
  readonly units: Units;
}

/** How much to take in the hand and where it goes; or why nothing is to be stuck on. */
export function PlanSay({ plan, left, units }: PlanSayProps) {
  if (!plan.ok || plan.value.places.length === 0) {
    return (
      <>
        <ScreenTitle>{words.weights.nothing}</ScreenTitle>
        <p className="instruction">
          {plan.ok ? words.weights.nothingWhy : words.weights.trouble[plan.failure.code]}
        </p>
        <Link className="plain" href={places.stand}>
          {words.weights.toStand}
        </Link>
        <p className="weights-left">{left}</p>
      </>
    );
  }
  const totalG = plan.value.places.reduce((sum, place) => sum + place.massG, 0);
  const total = knownFigure('weight', totalG, units);
  return (
    <>
      <ScreenTitle className="weights-figure">
        <small>{words.weights.stickOn} </small>
        <span className="figure">{total.figure}</span>
        <span className="figure-unit"> {total.unit}</span>
      </ScreenTitle>
      <PlaceList places={plan.value.places} units={units} />
      <p className="weights-left">{left}</p>
    </>
  );
}
