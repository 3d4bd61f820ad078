import { mountScreens } from './screens/main.tsx';
import { createAppUpdate } from './session/appUpdate.ts';
import { createSweepSession } from './session/createSweepSession.ts';
import { openLogbook } from './session/logbook/openLogbook.ts';
import { createReadingKeeper } from './session/readingKeeper.ts';

const place = document.getElementById('app');
if (!place) throw new Error('index.html has no element with the id "app"');
const session = createSweepSession();
const logbook = openLogbook();
const keeper = createReadingKeeper(session, logbook);
const update = createAppUpdate(session);
void mountScreens(place, { session, logbook, keeper, update });
