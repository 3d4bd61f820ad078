import type { ReactNode } from 'react';

import type { Weight } from '../../contract/reading.ts';
import type { SightingState } from '../../contract/session.ts';
import { wrapHalfTurnDeg } from '../../quantities/angle.ts';
import { useApp } from '../shell/appContext.ts';
import { LiveFrame } from '../sweep/LiveFrame.tsx';
import { words } from '../words/words.ts';
import { LeadArrow } from './LeadArrow.tsx';
import { leadLine, leadPlaceWords, leadSpoken } from './leadWords.ts';
import { LeadWheel } from './LeadWheel.tsx';
import { SpotWayMarks } from './SpotWayMarks.tsx';
import { useLead } from './useLead.ts';

export interface LeadLiveProps {
  readonly weight: Weight;
  readonly state: SightingState;
  readonly place: string;
  /** The button that ends this weight. */
  readonly children: ReactNode;
}

/** The wheel is seen: which way, how far, and the spot's way in the picture. */
export function LeadLive({ weight, state, place, children }: LeadLiveProps) {
  const { units, hearing } = useApp().settings;
  const { progress } = state;
  const { say, told } = useLead(weight, progress, hearing, (word, now) =>
    leadSpoken(word, now, weight, units),
  );
  const isLed = say.kind === 'turn' || say.kind === 'at-spot';
  const turnDeg = progress?.markSeen ? progress.turnDeg : null;
  const overlay = progress?.overlay ?? null;
  return (
    <LiveFrame
      mode="lead"
      source={say.kind}
      title={words.lead.title}
      say={leadLine(say, weight, units, progress)}
      told={isLed ? told : null}
      tone={say.kind === 'at-spot' ? 'done' : 'calm'}
      notice={state.notice}
      stream={state.stream}
      progress={progress}
      overPicture={
        isLed &&
        turnDeg !== null &&
        overlay !== null && (
          <SpotWayMarks
            overlay={overlay}
            azimuthDeg={wrapHalfTurnDeg(weight.angleDeg + turnDeg)}
            byDeg={say.byDeg}
            isAtSpot={say.kind === 'at-spot'}
          />
        )
      }
    >
      <div className="live-main lead-main" aria-hidden="true">
        {say.kind === 'turn' && <LeadArrow byDeg={say.byDeg} />}
        {say.kind === 'at-spot' && (
          <svg className="lead-here" viewBox="-60 -60 120 120">
            <path d="M-44 4 L-12 36 L48 -34" />
          </svg>
        )}
        {!isLed && <LeadWheel weight={weight} turnDeg={turnDeg} />}
      </div>
      <div className="live-side">{isLed && <LeadWheel weight={weight} turnDeg={turnDeg} />}</div>
      <div className="live-under lead-mark">
        <p>
          {place} · {leadPlaceWords(weight, units)}
        </p>
        {weight.massG > 0 && <p>{words.lead.markIt}</p>}
      </div>
      <div className="live-end">{children}</div>
    </LiveFrame>
  );
}
