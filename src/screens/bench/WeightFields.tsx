import type { WheelRecord } from '../../contract/logbook.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { MinusIcon, PlusIcon } from '../parts/icons.tsx';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { SourcedField } from '../parts/SourcedField.tsx';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { ArcFields } from './ArcFields.tsx';
import { WHEEL_RANGES } from './ranges.ts';
import type { WheelPartProps } from './WheelFields.tsx';

/** As many rings as the logbook keeps. */
const MOST_RINGS = 4;
/** A further ring is proposed this far outside the first, mm: where clips go over adhesive ones. */
const NEXT_RING_MORE_MM = 28;

type Ring = WheelRecord['rings'][number];
type Kinds = 'adhesive' | 'clip-on' | 'both';

/** Rings for weights, what fits there, the smallest piece, and stretches that are barred. */
export function WeightFields({ wheel, units, edit }: WheelPartProps) {
  const { bench } = words;
  const { keep } = edit;
  const addRing = () => {
    const value = Math.min(
      wheel.rings[0]!.radiusMm.value + NEXT_RING_MORE_MM,
      WHEEL_RANGES.ringRadiusMm[1],
    );
    const ring: Ring = { radiusMm: { value, origin: 'assumed' }, accepts: ['clip-on'] };
    keep({ ...wheel, rings: [...wheel.rings, ring] });
  };
  const removeRing = (index: number) =>
    edit.keepWithUndo(
      { ...wheel, rings: wheel.rings.toSpliced(index, 1) },
      wheel,
      bench.removed(bench.ring(index)),
    );
  return (
    <section className="group">
      <h2>{bench.groups.weights}</h2>
      {wheel.rings.map((ring, index) => (
        <RingFields
          key={index}
          {...{ ring, index, units }}
          onRing={(changed) => keep({ ...wheel, rings: wheel.rings.with(index, changed) })}
          onRemove={() => removeRing(index)}
        />
      ))}
      {wheel.rings.length < MOST_RINGS && (
        <button type="button" className="plain bench-add" onClick={addRing}>
          <PlusIcon />
          {bench.addRing}
        </button>
      )}
      <NumberStepper
        label={bench.step}
        name="weightStepG"
        help={bench.stepHelp}
        quantity="weight"
        units={units}
        value={wheel.weightStepG}
        range={WHEEL_RANGES.weightStepG}
        onValue={(weightStepG) => weightStepG !== null && keep({ ...wheel, weightStepG })}
      />
      <ArcFields wheel={wheel} units={units} edit={edit} />
    </section>
  );
}

interface RingFieldsProps {
  readonly ring: Ring;
  readonly index: number;
  readonly units: Units;
  readonly onRing: (ring: Ring) => void;
  readonly onRemove: () => void;
}

/** One ring: how far out, and what holds there. The first cannot be taken away. */
function RingFields({ ring, index, units, onRing, onRemove }: RingFieldsProps) {
  const { bench } = words;
  return (
    <div className="bench-ring">
      <SourcedField
        label={bench.ring(index)}
        name={`ring${index}`}
        help={index === 0 ? bench.ringHelp : undefined}
        quantity="length"
        units={units}
        value={ring.radiusMm}
        range={WHEEL_RANGES.ringRadiusMm}
        onValue={(radiusMm) => radiusMm && onRing({ ...ring, radiusMm })}
      />
      <div className="bench-ring-kinds">
        <ChoiceTiles<Kinds>
          label={bench.accepts}
          tiles={(['adhesive', 'clip-on', 'both'] as const).map((value) => ({
            value,
            word: bench.kinds[value],
          }))}
          chosen={kindsOf(ring)}
          onChoose={(kinds) => onRing({ ...ring, accepts: acceptsOf(kinds) })}
        />
        {index > 0 && (
          <button type="button" className="plain" onClick={onRemove}>
            <MinusIcon />
            {bench.removeRing}
          </button>
        )}
      </div>
    </div>
  );
}

function kindsOf({ accepts }: Ring): Kinds {
  return accepts.length > 1 ? 'both' : accepts[0]!;
}

function acceptsOf(kinds: Kinds): Ring['accepts'] {
  return kinds === 'both' ? ['adhesive', 'clip-on'] : [kinds];
}
