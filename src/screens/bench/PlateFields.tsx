import type { StandRecord } from '../../contract/logbook.ts';
import { PLATE_MATERIALS, type PlateMaterialName } from '../../balance/plateMaterials.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { OnOffSwitch } from '../parts/OnOffSwitch.tsx';
import { words } from '../words/words.ts';
import type { StandPartProps } from './BallStock.tsx';
import { DIRECTION_RANGE_DEG, STAND_RANGES } from './ranges.ts';
import { ScrewsDrawing } from './ScrewsDrawing.tsx';

type Screws = NonNullable<StandRecord['screws']>;

/** A plate of a hand's breadth and a half on M8 bolts, one of them toward the camera. */
const PROPOSED_SCREWS: Screws = {
  firstAzimuthDeg: 0,
  circleRadiusMm: 120,
  threadPitchMm: 1.25,
  clockwiseLifts: true,
};

const MATERIALS = Object.keys(PLATE_MATERIALS) as PlateMaterialName[];

/** What the ball stands on, and how that is levelled. */
export function PlateFields({ stand, units, edit }: StandPartProps) {
  const { screws } = stand;
  const text = words.stand;
  return (
    <section className="group">
      <h2>{text.groups.plate}</h2>
      <ChoiceTiles
        label={text.plate}
        tiles={MATERIALS.map((value) => ({ value, word: words.bench.materials[value] }))}
        chosen={stand.plateMaterial}
        onChoose={(plateMaterial) => edit.keep({ ...stand, plateMaterial })}
      />
      <OnOffSwitch
        label={text.screws}
        help={text.screwsHelp}
        isOn={screws !== null}
        onSwitch={(isOn) =>
          isOn
            ? edit.keep({ ...stand, screws: PROPOSED_SCREWS })
            : edit.keepWithUndo({ ...stand, screws: null }, stand, text.removed(text.screws))
        }
      />
      {screws !== null && (
        <ScrewFields
          screws={screws}
          units={units}
          onScrews={(next) => edit.keep({ ...stand, screws: next })}
        />
      )}
    </section>
  );
}

/** One press changes a thread's pitch by this, in the unit shown. */
const PITCH_STEP = { metric: 0.25, 'inch-pound': 0.01 } as const;

function ScrewFields(props: {
  readonly screws: Screws;
  readonly units: StandPartProps['units'];
  readonly onScrews: (screws: Screws) => void;
}) {
  const { screws, units, onScrews } = props;
  const text = words.stand;
  return (
    <>
      <ScrewsDrawing firstAzimuthDeg={screws.firstAzimuthDeg} />
      <NumberStepper
        label={text.firstScrew}
        name="firstAzimuthDeg"
        quantity="angle"
        units={units}
        value={wrapTurnDeg(screws.firstAzimuthDeg)}
        range={DIRECTION_RANGE_DEG}
        stepShown={5}
        onValue={(value) => value !== null && onScrews({ ...screws, firstAzimuthDeg: value })}
      />
      <NumberStepper
        label={text.circle}
        name="circleRadiusMm"
        quantity="length"
        units={units}
        value={screws.circleRadiusMm}
        range={STAND_RANGES.circleRadiusMm}
        onValue={(value) => value !== null && onScrews({ ...screws, circleRadiusMm: value })}
      />
      <NumberStepper
        label={text.pitch}
        name="threadPitchMm"
        help={text.pitchHelp}
        quantity="length"
        units={units}
        value={screws.threadPitchMm}
        range={STAND_RANGES.threadPitchMm}
        stepShown={PITCH_STEP[units]}
        onValue={(value) => value !== null && onScrews({ ...screws, threadPitchMm: value })}
      />
      <ChoiceTiles
        label={text.sense}
        tiles={[
          { value: 'lifts', word: text.lifts },
          { value: 'lowers', word: text.lowers },
        ]}
        chosen={screws.clockwiseLifts ? 'lifts' : 'lowers'}
        onChoose={(value) => onScrews({ ...screws, clockwiseLifts: value === 'lifts' })}
      />
    </>
  );
}
