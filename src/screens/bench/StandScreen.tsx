import { LogbookAnswer } from '../parts/LogbookAnswer.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { UndoBar } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { useStand } from '../shell/useLogbook.ts';
import { words } from '../words/words.ts';
import { BallStock } from './BallStock.tsx';
import { CameraFields } from './CameraFields.tsx';
import { PlateFields } from './PlateFields.tsx';
import { useStandEdit } from './useStandEdit.ts';
import { WeightStock } from './WeightStock.tsx';
import './bench.css';
import './stand.css';

/** The stand itself: what every wheel's job needs, entered once. */
export default function StandScreen() {
  const { settings } = useApp();
  const answers = [useStand()] as const;
  const edit = useStandEdit();
  return (
    <LogbookAnswer answers={answers} isTroubled={edit.isTroubled}>
      {(stand) => {
        const part = { stand, units: settings.units, edit };
        return (
          <div className="stand">
            <div className="stand-title">
              <ScreenTitle>{words.stand.title}</ScreenTitle>
              <p>{words.stand.lead}</p>
            </div>
            <div className="fields">
              <BallStock {...part} />
              <PlateFields {...part} />
            </div>
            <div className="fields">
              <CameraFields {...part} />
              <WeightStock {...part} />
            </div>
            <UndoBar offer={edit.offer} />
          </div>
        );
      }}
    </LogbookAnswer>
  );
}
