import { createRoot } from 'react-dom/client';

import { failed } from '../../../src/contract/outcome.ts';
import { NO_ERRAND, type SessionState, type SweepSession } from '../../../src/contract/session.ts';
import { applyStoredLanguage } from '../../../src/screens/state/useLanguage.ts';
import { App } from '../../../src/screens/App.tsx';
import { createMemoryLogbook } from '../../../src/session/logbook/memoryLogbook.ts';
import { createAppUpdate, type AppUpdate } from '../../../src/session/appUpdate.ts';
import { createReadingKeeper } from '../../../src/session/readingKeeper.ts';
import { emptyShelf } from '../../fakes/emptyShelf.ts';
import { drawnPicture } from './drawnPicture.ts';
import { GALLERY_PLACES } from './galleryPlaces.ts';
import { fillShed } from './shedLogbook.ts';
import { GALLERY_STATES, SIGHTING_STATES } from './states.ts';

/**
 * Shows the screens in one fixed state, `?state=NAME`; `&backdrop=ADDRESS` puts a real picture
 * behind the overlay. `?place=NAME` shows a screen of the logbook instead, with `&state=NAME` for
 * those that follow a camera. `&update` has a new version of the app waiting, `&untold` one who was not told yet what the camera is for. What the screens ask of the session is written to `window.asked`.
 */
const query = new URLSearchParams(location.search);
const name = query.get('state') ?? 'choosing';
const backdrop = query.get('backdrop');

declare global {
  interface Window {
    asked: string[];
    /** Lets a test lead the screens from one state to another. */
    showState: (name: string) => void;
    /** The same at the sight, where the place stays. */
    showSight: (name: string) => void;
  }
}

const STATES = { ...GALLERY_STATES, ...SIGHTING_STATES };

// Told what the camera is for before, unless a test asks what is said then.
if (query.has('untold')) localStorage.removeItem('tiltsweep.cameraExplained');
else localStorage.setItem('tiltsweep.cameraExplained', 'true');

window.asked = [];
let state: SessionState = { phase: 'choosing', problem: null };
let errand = NO_ERRAND;
const listeners = new Set<() => void>();

function show(next: SessionState): void {
  state = next.phase === 'choosing' ? next : { ...next, errand };
  // Each sweep has a result of its own.
  if (state.phase === 'read') state = { ...state, result: { ...state.result } };
  for (const listener of listeners) listener();
}

/** A reading is reached from its sweep. */
function atItsPlace(next: SessionState): void {
  if (next.phase !== 'choosing') location.hash = '/sweep';
}

const session: SweepSession = {
  getState: () => state,
  subscribe(onChange) {
    listeners.add(onChange);
    return () => listeners.delete(onChange);
  },
  onPreview(receive) {
    if (receive === null) return;
    const overlay = 'progress' in state ? (state.progress?.overlay ?? null) : null;
    void drawnPicture(backdrop).then((picture) => receive({ picture, overlay }));
  },
  readSample: async () => void window.asked.push('readSample'),
  readFiles: async (files) =>
    void window.asked.push(`readFiles ${files.map((file) => file.name).join(' ')}`),
  takeUp: async () => void window.asked.push('takeUp'),
  startCamera: async (setup, options) => {
    errand = options?.errand ?? NO_ERRAND;
    window.asked.push(`startCamera ${JSON.stringify(setup)}`);
  },
  openSight: async (setup) => void window.asked.push(`openSight ${JSON.stringify(setup)}`),
  changeSight: (setup, change) =>
    void window.asked.push(`changeSight ${change} ${JSON.stringify(setup.sight)}`),
  leaveCamera: () => {
    if (state.phase === 'sighting') show({ phase: 'choosing', problem: null });
  },
  noteTests: (tests) => void window.asked.push(`noteTests ${JSON.stringify(tests)}`),
  beginSweep: () => void window.asked.push('beginSweep'),
  finishSweep: async () => void window.asked.push('finishSweep'),
  stop: () => {
    window.asked.push('stop');
    show({ phase: 'choosing', problem: null });
  },
};

window.showState = (next) => {
  atItsPlace(STATES[next]!);
  show(STATES[next]!);
};

window.showSight = (next) => show(STATES[next]!);

const logbook = createMemoryLogbook();
const keeper = createReadingKeeper(session, logbook);
const update = query.has('update') ? waitingUpdate() : createAppUpdate(session, null);
const place = query.get('place');
if (place === null) {
  atItsPlace(STATES[name]!);
} else {
  await fillShed(logbook);
  // Kept on a reload, as an address is.
  if (location.hash === '') location.hash = GALLERY_PLACES[place]!;
}
await applyStoredLanguage();
createRoot(document.getElementById('root')!).render(
  <App {...{ session, logbook, shelf: emptyShelf, keeper, update }} />,
);
show(STATES[name]!);

/** A new version that is here and waits to be taken. */
function waitingUpdate(): AppUpdate {
  return {
    isWaiting: () => true,
    subscribe: () => () => undefined,
    apply: async () => failed('sweeping'),
  };
}
