import { mountScreens } from './screens/main.tsx';
import { createSweepSession } from './session/createSweepSession.ts';

const place = document.getElementById('app');
if (!place) throw new Error('index.html has no element with the id "app"');
mountScreens(place, createSweepSession());
