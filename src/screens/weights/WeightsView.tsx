import { useState } from 'react';

import type { WheelArcRecord, WheelRecord } from '../../contract/logbook.ts';
import type { Outcome } from '../../contract/outcome.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { PlanTrouble, PlanWishes, WeightPlan } from '../../job/weightPlan.ts';
import { UndoBar, type UndoOffer } from '../parts/UndoBar.tsx';
import { readingSummary } from '../read/readingSummary.ts';
import { formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { BlockedStretches } from './BlockedStretches.tsx';
import { PlanSay } from './PlanSay.tsx';
import { PlanWheel } from './PlanWheel.tsx';
import { WishChoices } from './WishChoices.tsx';

export interface WeightsViewProps {
  readonly reading: AcceptedReading;
  readonly setup: SweepSetup;
  readonly wheel: WheelRecord;
  readonly plan: Outcome<WeightPlan, PlanTrouble>;
  readonly wishes: PlanWishes;
  readonly units: Units;
  readonly onWishes: (wishes: PlanWishes) => void;
  readonly onBlock: (arcs: readonly WheelArcRecord[]) => void;
  readonly onLead: () => void;
  readonly onStuck: () => void;
}

/** The wheel with its weights on one side, what to take in the hand on the other. */
export function WeightsView(props: WeightsViewProps) {
  const { reading, setup, wheel, plan, units, onBlock } = props;
  const [drawing, setDrawing] = useState(false);
  const [offer, setOffer] = useState<UndoOffer | null>(null);
  const arcs = wheel.forbiddenArcs;
  const changeArcs = (next: readonly WheelArcRecord[]) => {
    onBlock(next);
    const undo = () => {
      setOffer(null);
      onBlock(arcs);
    };
    setOffer(next.length < arcs.length ? { text: words.weights.freed, undo } : null);
  };
  const summary = readingSummary(reading, setup);
  const leftG = plan.ok ? plan.value.leftGmm / setup.wheel.weightRadiusMm : summary.amountG;
  const left = words.weights.left(formatMass(leftG, units, summary.amountPlusMinusG).text);
  const places = plan.ok ? plan.value.places : [];
  return (
    <div className="weights">
      <section className="weights-wheel">
        <PlanWheel
          summary={summary}
          setup={setup}
          places={places}
          arcs={arcs}
          left={left}
          units={units}
          drawing={drawing}
          onArc={(arc) => changeArcs([...arcs, arc])}
        />
      </section>
      <section className="weights-say">
        <PlanSay plan={plan} left={left} units={units} />
        {places.length > 0 && (
          <div className="weights-actions">
            <button type="button" className="main" data-role="lead" onClick={props.onLead}>
              {words.weights.lead}
            </button>
            <button type="button" className="plain" data-role="stuck-on" onClick={props.onStuck}>
              {words.weights.stuck}
            </button>
          </div>
        )}
      </section>
      <WishChoices {...{ wheel, units }} wishes={props.wishes} onWishes={props.onWishes} />
      <BlockedStretches arcs={arcs} drawing={drawing} onDrawing={setDrawing} onArcs={changeArcs} />
      <UndoBar offer={offer} />
    </div>
  );
}
