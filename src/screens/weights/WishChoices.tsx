import type { WheelRecord } from '../../contract/logbook.ts';
import type { PlanWishes } from '../../job/weightPlan.ts';
import { formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface WishChoicesProps {
  readonly wheel: Pick<WheelRecord, 'rings'>;
  readonly wishes: PlanWishes;
  readonly units: Units;
  readonly onWishes: (wishes: PlanWishes) => void;
}

/** One place or two; and which circle of the rim, where there is more than one. */
export function WishChoices({ wheel, wishes, units, onWishes }: WishChoicesProps) {
  return (
    <div className="weights-wishes">
      <fieldset className="choice-row">
        <legend>{words.weights.placesLegend}</legend>
        {([1, 2] as const).map((count) => (
          <label key={count}>
            <input
              type="radio"
              name="weight-places"
              checked={wishes.places === count}
              onChange={() => onWishes({ ...wishes, places: count })}
            />
            <span>{count === 1 ? words.weights.onePlace : words.weights.split}</span>
          </label>
        ))}
      </fieldset>
      {wheel.rings.length > 1 && (
        <fieldset className="choice-row">
          <legend>{words.weights.ringLegend}</legend>
          {[null, ...wheel.rings.keys()].map((ring) => (
            <label key={String(ring)}>
              <input
                type="radio"
                name="weight-ring"
                checked={wishes.ring === ring}
                onChange={() => onWishes({ ...wishes, ring })}
              />
              <span>
                {ring === null
                  ? words.weights.anyRing
                  : words.weights.radius(
                      formatKnown('length', wheel.rings[ring]!.radiusMm.value, units),
                    )}
              </span>
            </label>
          ))}
        </fieldset>
      )}
    </div>
  );
}
