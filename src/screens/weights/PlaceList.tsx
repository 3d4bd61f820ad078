import type { WeightPlace } from '../../balance/weightChoice.ts';
import { ShapeSign } from '../parts/shapes.tsx';
import { formatClockAndDeg, formatKnownMass, formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

/** Each place with its grams, where it is, and of which pieces it is made up. */
export function PlaceList({
  places,
  units,
}: {
  readonly places: readonly WeightPlace[];
  readonly units: Units;
}) {
  return (
    <ol className="weights-places">
      {places.map((place) => (
        <li key={`${place.ring} ${place.angleDeg}`}>
          <ShapeSign shape="weight" />
          <p>
            <strong>
              {words.weights.place(
                formatKnownMass(place.massG, units),
                formatClockAndDeg(place.angleDeg),
              )}
            </strong>
            <span>
              {words.weights.pieces(piecesText(place, units))},{' '}
              {words.weights.radius(formatKnown('length', place.radiusMm, units))}
            </span>
          </p>
        </li>
      ))}
    </ol>
  );
}

/** "2 × 10 g, 1 × 5 g" */
function piecesText({ pieces }: WeightPlace, units: Units): string {
  const counts = new Map<number, number>();
  for (const { massG } of pieces) counts.set(massG, (counts.get(massG) ?? 0) + 1);
  return [...counts]
    .map(([massG, count]) => `${count} × ${formatKnownMass(massG, units)}`)
    .join(', ');
}
