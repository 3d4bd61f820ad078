import { Link } from 'wouter';

import { LogbookAnswer } from '../parts/LogbookAnswer.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { UndoBar } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { places } from '../shell/places.ts';
import { useEntries, useStand, useWheel } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';
import { BallFields } from './BallFields.tsx';
import { BallFindings } from './BallFindings.tsx';
import { SeatDrawing } from './SeatDrawing.tsx';
import { TapeFields } from './TapeFields.tsx';
import { useWheelEdit } from './useWheelEdit.ts';
import { WeightFields } from './WeightFields.tsx';
import { WheelFields } from './WheelFields.tsx';
import './bench.css';

export interface BenchScreenProps {
  readonly wheelId: string;
}

/** The measures of a wheel on one side; the ball under it, and what follows, on the other. */
export default function BenchScreen({ wheelId }: BenchScreenProps) {
  const { settings } = useApp();
  const answers = [useWheel(wheelId), useStand(), useEntries(wheelId)] as const;
  const edit = useWheelEdit();
  const { units } = settings;
  return (
    <LogbookAnswer answers={answers} isTroubled={edit.isTroubled}>
      {(wheel, stand, entries) => (
        <div className="bench">
          <div className="bench-title">
            <ScreenTitle>{wheel.label || words.reading.unnamed}</ScreenTitle>
            <p>{words.bench.lead}</p>
          </div>
          <aside className="bench-side">
            <SeatDrawing wheel={wheel} units={units} />
            <BallFindings wheel={wheel} stand={stand} units={units} edit={edit} />
          </aside>
          <div className="fields bench-fields">
            <WheelFields wheel={wheel} units={units} edit={edit} />
            <BallFields wheel={wheel} entries={entries} units={units} edit={edit} />
            <WeightFields wheel={wheel} units={units} edit={edit} />
            <TapeFields wheel={wheel} units={units} edit={edit} />
            <Link className="main bench-next" href={places.sight(wheelId)} data-role="to-sight">
              {words.bench.sweepNow}
            </Link>
          </div>
          <UndoBar offer={edit.offer} />
        </div>
      )}
    </LogbookAnswer>
  );
}
