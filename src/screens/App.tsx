import { Suspense } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';

import { AppHeader } from './parts/AppHeader.tsx';
import { StorageNotice } from './logbook/StorageNotice.tsx';
import { FilmSetupPlace } from './setup/FilmSetupPlace.tsx';
import { ReadingPlace } from './read/ReadingPlace.tsx';
import { ShedScreen } from './shed/ShedScreen.tsx';
import { AppContext, useApp, type AppParts } from './shell/appContext.ts';
import * as screens from './shell/screens.tsx';
import { UpdateOffer } from './shell/UpdateOffer.tsx';
import { useFilms } from './shell/useFilms.ts';
import { useFollowSession } from './shell/useFollowSession.ts';
import { useSettings } from './state/useSettings.ts';
import { useLaserColour, useNoticeStreak, useSessionState } from './state/useSessionState.ts';
import { SweepPlace } from './sweep/SweepPlace.tsx';
import './look/look.css';

/** The whole program: one address a screen, one session for all of them. */
export function App(parts: AppParts) {
  return (
    // oxlint-disable-next-line react/hooks -- the router takes its hook as a value
    <Router hook={useHashLocation}>
      <Screens parts={parts} />
    </Router>
  );
}

function Screens({ parts }: { readonly parts: AppParts }) {
  const settings = useSettings();
  const films = useFilms(parts.session);
  const streak = useNoticeStreak(useSessionState(parts.session));
  return (
    <AppContext value={{ ...parts, settings, films, streak }}>
      <Shell />
    </AppContext>
  );
}

function Shell() {
  const { session, settings, update } = useApp();
  const state = useSessionState(session);
  const laser = useLaserColour(state);
  useFollowSession();
  const status =
    state.phase === 'read' ? { 'data-status': state.result.reading.status } : undefined;
  return (
    // A new language draws everything anew: sentences are read where they are drawn.
    <div className="app" data-laser={laser} key={settings.language}>
      <AppHeader settings={settings} />
      <UpdateOffer update={update} sweeping={state.phase === 'sweeping'} />
      <StorageNotice />
      <main data-phase={state.phase} {...status}>
        <Suspense fallback={null}>
          <Places />
        </Suspense>
      </main>
    </div>
  );
}

function Places() {
  return (
    <Switch>
      <Route path="/" component={ShedScreen} />
      <Route path="/sweep" component={SweepPlace} />
      <Route path="/film-setup" component={FilmSetupPlace} />
      <Route path="/stand" component={screens.StandScreen} />
      <Route path="/logbook" component={screens.LogbookScreen} />
      <Route path="/settings" component={screens.SettingsScreen} />
      <Route path="/practice" component={screens.PracticeScreen} />
      <Route path="/help" component={screens.HelpScreen} />
      <Route path="/logbook/:wheelId">
        {({ wheelId }) => <screens.LoggedWheelScreen key={wheelId} wheelId={wheelId} />}
      </Route>
      <Route path="/wheel/:wheelId">
        {({ wheelId }) => <screens.WheelScreen key={wheelId} wheelId={wheelId} />}
      </Route>
      <Route path="/wheel/:wheelId/bench">
        {({ wheelId }) => <screens.BenchScreen key={wheelId} wheelId={wheelId} />}
      </Route>
      <Route path="/wheel/:wheelId/sight">
        {({ wheelId }) => <screens.SightScreen key={wheelId} wheelId={wheelId} />}
      </Route>
      <Route path="/wheel/:wheelId/by-eye">
        {({ wheelId }) => <screens.ByEyeScreen key={wheelId} wheelId={wheelId} />}
      </Route>
      <Route path="/wheel/:wheelId/reading/:entryId">
        {(at) => <ReadingPlace key={at.entryId} {...at} />}
      </Route>
      <Route path="/wheel/:wheelId/weights/:entryId">
        {(at) => <screens.WeightsScreen key={at.entryId} {...at} />}
      </Route>
      <Route path="/wheel/:wheelId/lead/:entryId">
        {(at) => <screens.LeadScreen key={at.entryId} {...at} />}
      </Route>
      <Route path="/wheel/:wheelId/proof/:entryId">
        {(at) => <screens.ProofScreen key={at.entryId} {...at} />}
      </Route>
      {/* An address that is none: home. */}
      <Route component={ShedScreen} />
    </Switch>
  );
}
