import type { WheelStage } from '../../contract/logbook.ts';
import { ShapeSign } from './shapes.tsx';

/** Where a wheel stands as a shape of a letter's size, beside its word. */
export function StageSign({ stage }: { readonly stage: WheelStage }) {
  if (stage === 'read') return <ShapeSign shape="light" />;
  if (stage === 'weights-on') return <ShapeSign shape="weight" />;
  return (
    <svg className="shape-sign" viewBox="-20 -20 40 40" aria-hidden="true" focusable="false">
      {stage === 'proved' ? (
        <>
          <circle className="stage-proved" r={16} />
          <path className="stage-tick" d="M-8 0 L-2 7 L9 -7" />
        </>
      ) : (
        <circle className="stage-unread" r={14} />
      )}
    </svg>
  );
}
