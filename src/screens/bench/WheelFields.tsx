import { useState } from 'react';

import type { WheelRecord } from '../../contract/logbook.ts';
import { withTyre } from '../../job/tyreProposal.ts';
import { SourcedField } from '../parts/SourcedField.tsx';
import { TextField } from '../parts/TextField.tsx';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { WHEEL_RANGES } from './ranges.ts';
import type { WheelEdit } from './useWheelEdit.ts';

export interface WheelPartProps {
  readonly wheel: WheelRecord;
  readonly units: Units;
  readonly edit: WheelEdit;
}

/** Longest name or size that the logbook takes. */
const LONGEST_TEXT = 200;

/** Name, size, mass and the edge's radius. */
export function WheelFields({ wheel, units, edit }: WheelPartProps) {
  const [isTyreUnread, setTyreUnread] = useState(false);
  const { bench } = words;
  const { keep } = edit;
  return (
    <section className="group">
      <h2>{bench.groups.wheel}</h2>
      <div className="bench-pair">
        <TextField
          label={bench.label}
          name="label"
          value={wheel.label}
          maxLength={LONGEST_TEXT}
          onText={(label) => keep({ ...wheel, label })}
        />
        <TextField
          label={bench.place}
          name="place"
          value={wheel.place}
          maxLength={LONGEST_TEXT}
          proposals={bench.places}
          onText={(place) => keep({ ...wheel, place })}
        />
      </div>
      <TextField
        label={bench.tyre}
        name="tyre"
        help={bench.tyreHelp}
        value={wheel.tyre}
        maxLength={LONGEST_TEXT}
        problem={isTyreUnread ? bench.tyreProblem : null}
        onText={(tyre) => {
          const proposal = withTyre(wheel, tyre);
          setTyreUnread(proposal.problem !== null);
          keep(proposal.wheel);
        }}
      />
      <SourcedField
        label={bench.mass}
        name="massKg"
        help={bench.massHelp}
        quantity="wheelMass"
        units={units}
        value={wheel.massKg}
        range={WHEEL_RANGES.massKg}
        onValue={(massKg) => massKg && keep({ ...wheel, massKg })}
      />
      <SourcedField
        label={bench.edge}
        name="edgeRadiusMm"
        help={bench.edgeHelp}
        quantity="length"
        units={units}
        value={wheel.edgeRadiusMm}
        range={WHEEL_RANGES.edgeRadiusMm}
        onValue={(edgeRadiusMm) => edgeRadiusMm && keep({ ...wheel, edgeRadiusMm })}
      />
    </section>
  );
}
