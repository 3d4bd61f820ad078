import { mountScreens } from './screens/main.tsx';
import { readBoolean, storedValue } from './screens/state/preference.ts';
import { createAppUpdate } from './session/appUpdate.ts';
import { createSweepSession } from './session/createSweepSession.ts';
import { openLogbook } from './session/logbook/openLogbook.ts';
import { createReadingKeeper } from './session/readingKeeper.ts';

const place = document.getElementById('app');
if (!place) throw new Error('index.html has no element with the id "app"');
const { logbook, shelf } = openLogbook();
const session = createSweepSession({
  shelf,
  isWanted: () => readBoolean(storedValue('keepFilms')) ?? true,
});
const keeper = createReadingKeeper(session, logbook, shelf);
const update = createAppUpdate(session);
void mountScreens(place, { session, logbook, shelf, keeper, update });
