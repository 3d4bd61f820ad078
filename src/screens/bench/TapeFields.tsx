import { MarkColourSchema } from '../../contract/setup.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { words } from '../words/words.ts';
import { WHEEL_RANGES } from './ranges.ts';
import type { WheelPartProps } from './WheelFields.tsx';

/** The tape in line with the valve: its colour and width tell it from any other. */
export function TapeFields({ wheel, units, edit }: WheelPartProps) {
  const { bench, setup } = words;
  const { mark } = wheel;
  return (
    <section className="group">
      <h2>{bench.groups.tape}</h2>
      <NumberStepper
        label={bench.tapeWidth}
        name="markWidthMm"
        help={setup.colourHelp}
        quantity="length"
        units={units}
        value={mark.widthMm}
        range={WHEEL_RANGES.markWidthMm}
        onValue={(widthMm) =>
          widthMm !== null && edit.keep({ ...wheel, mark: { ...mark, widthMm } })
        }
      />
      <ChoiceTiles
        label={bench.tapeColour}
        tiles={MarkColourSchema.options.map((value) => ({
          value,
          word: setup.colours[value],
          drawing: <span className={`tape tape-${value}`} aria-hidden="true" />,
        }))}
        chosen={mark.colour}
        onChoose={(colour) => edit.keep({ ...wheel, mark: { ...mark, colour } })}
      />
    </section>
  );
}
