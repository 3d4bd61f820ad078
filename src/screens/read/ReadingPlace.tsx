import { useLocation } from 'wouter';

import { useApp } from '../shell/appContext.ts';
import { LogbookGap } from '../shell/LogbookGap.tsx';
import { places } from '../shell/places.ts';
import { useLogbookAnswer } from '../shell/useLogbook.ts';
import { useKept } from '../shell/useFollowSession.ts';
import { useSessionState } from '../state/useSessionState.ts';
import { ReadScreen } from './ReadScreen.tsx';

/** A reading as it stands in the logbook, just made or years old. */
export function ReadingPlace({ entryId }: { readonly wheelId: string; readonly entryId: string }) {
  const { session, settings, films, streak } = useApp();
  const [, goTo] = useLocation();
  const state = useSessionState(session);
  const kept = useKept();
  const entry = useLogbookAnswer(`entry ${entryId}`, (logbook) => logbook.entry(entryId));
  if (!entry?.ok || entry.value.kind !== 'sweep') return <LogbookGap answer={entry} />;
  const { source, setup, assumed, reading, trace, wheelId } = entry.value;
  const isJustMade = kept?.kept.ok === true && kept.kept.value.entryId === entryId;
  const isCheck = setup.after !== undefined;
  return (
    <ReadScreen
      source={source}
      setup={setup}
      result={{ reading, trace }}
      notice={isJustMade && state.phase === 'read' ? state.notice : null}
      streak={streak}
      units={settings.units}
      assumed={assumed}
      next={{
        main: isCheck ? places.proof(wheelId, entryId) : places.weights(wheelId, entryId),
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
