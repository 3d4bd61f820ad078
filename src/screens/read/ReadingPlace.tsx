import { useLocation } from 'wouter';

import { failed } from '../../contract/outcome.ts';
import { useApp } from '../shell/appContext.ts';
import { LogbookGap } from '../shell/LogbookGap.tsx';
import { places } from '../shell/places.ts';
import { useLogbookAnswer, useStand, useWheel } from '../shell/useLogbook.ts';
import { useKept } from '../shell/useFollowSession.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { chosenPlan } from '../weights/chosenPlan.ts';
import { ReadScreen } from './ReadScreen.tsx';

/** A reading as it stands in the logbook, just made or years old. */
export function ReadingPlace(at: { readonly wheelId: string; readonly entryId: string }) {
  const { entryId } = at;
  const { session, settings, films, streak } = useApp();
  const [, goTo] = useLocation();
  const state = useSessionState(session);
  const kept = useKept();
  const entry = useLogbookAnswer(`entry ${entryId}`, (logbook) => logbook.entry(entryId));
  const wheel = useWheel(at.wheelId);
  const stand = useStand();
  if (wheel === null || stand === null) return null;
  if (!entry?.ok) return <LogbookGap answer={entry} />;
  if (entry.value.kind !== 'sweep') {
    return <LogbookGap answer={failed('not-found', { entryId })} />;
  }
  const { source, setup, assumed, reading, trace, wheelId } = entry.value;
  const isJustMade = kept?.kept.ok === true && kept.kept.value.entryId === entryId;
  const plan =
    reading.status === 'ok' && wheel.ok && stand.ok
      ? chosenPlan({
          sweep: { id: entryId, reading },
          wheel: wheel.value,
          stand: stand.value,
        })
      : null;
  const isCheck = setup.after !== undefined;
  return (
    <ReadScreen
      source={source}
      setup={setup}
      result={{ reading, trace }}
      notice={isJustMade && state.phase === 'read' ? state.notice : null}
      plan={plan?.ok ? plan.value : null}
      streak={streak}
      units={settings.units}
      assumed={assumed}
      next={{
        main: isCheck ? places.proof(wheelId, entryId) : places.weights(wheelId, entryId),
        lead: places.lead(wheelId, entryId),
        byEye: places.byEye(wheelId),
        wheel: places.wheel(wheelId),
      }}
      onAgain={() => {
        if (source === 'sample') void session.readSample();
        else goTo(source === 'file' ? places.shed : places.sight(wheelId));
      }}
      onChangeSetup={films.changeSetup === null ? null : () => films.changeSetup?.(setup)}
    />
  );
}
