import type { LogEntry } from '../../contract/logbook.ts';
import { USUAL_BORE_MM, withBall } from '../../job/wheelOnBall.ts';
import { CautionIcon } from '../parts/icons.tsx';
import { SourcedField } from '../parts/SourcedField.tsx';
import { words } from '../words/words.ts';
import { DepthWays } from './DepthWays.tsx';
import { DEPTH_STEP, WHEEL_RANGES } from './ranges.ts';
import type { WheelPartProps } from './WheelFields.tsx';

/** Ball, bore, and how deep the mass hangs. */
export function BallFields(props: WheelPartProps & { readonly entries: readonly LogEntry[] }) {
  const { wheel, units, edit } = props;
  const { bench } = words;
  const { keep } = edit;
  return (
    <section className="group">
      <h2>{bench.groups.ball}</h2>
      <SourcedField
        label={bench.bore}
        name="boreDiameterMm"
        help={bench.boreHelp}
        quantity="length"
        units={units}
        value={wheel.boreDiameterMm}
        proposal={USUAL_BORE_MM}
        range={WHEEL_RANGES.boreDiameterMm}
        mayBeEmpty
        onValue={(boreDiameterMm) => keep({ ...wheel, boreDiameterMm })}
      />
      <SourcedField
        label={bench.ball}
        name="ballDiameterMm"
        quantity="length"
        units={units}
        value={wheel.ballDiameterMm}
        range={WHEEL_RANGES.ballDiameterMm}
        onValue={(ball) => ball && edit.keepIfItStands(withBall(wheel, ball))}
      />
      <SourcedField
        label={bench.depth}
        name="pendulumDepthMm"
        help={bench.depthHelp}
        quantity="length"
        units={units}
        value={wheel.pendulumDepthMm}
        range={WHEEL_RANGES.pendulumDepthMm}
        stepShown={DEPTH_STEP[units]}
        onValue={(pendulumDepthMm) => pendulumDepthMm && keep({ ...wheel, pendulumDepthMm })}
      />
      {edit.refusal !== null && (
        <p className="notice" role="alert">
          <CautionIcon />
          {edit.refusal}
        </p>
      )}
      <DepthWays {...props} />
    </section>
  );
}
