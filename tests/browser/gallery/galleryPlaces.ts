import { places } from '../../../src/screens/shell/places.ts';
import { SHED_ENTRY_IDS, SHED_WHEEL_IDS } from './shedLogbook.ts';

const { neverRead, read, weightsOn, proved } = SHED_WHEEL_IDS;

/** Screens that show what is in the logbook, by name: the address, with the shed of four wheels. */
export const GALLERY_PLACES: Readonly<Record<string, string>> = {
  shed: places.shed,
  'wheel-new': places.wheel(neverRead),
  'wheel-read': places.wheel(read),
  'wheel-weights': places.wheel(weightsOn),
  'wheel-proved': places.wheel(proved),
  'bench-new': places.bench(neverRead),
  bench: places.bench(proved),
  sight: places.sight(read),
  lead: places.lead(read, SHED_ENTRY_IDS.read),
  stand: places.stand,
  reading: places.reading(read, SHED_ENTRY_IDS.read),
  'reading-refused': places.reading(read, SHED_ENTRY_IDS.refused),
  weights: places.weights(read, SHED_ENTRY_IDS.read),
  proof: places.proof(proved, SHED_ENTRY_IDS.check),
  'proof-to-trim': places.proof(weightsOn, SHED_ENTRY_IDS.before),
  'by-eye': places.byEye(neverRead),
  'by-eye-known': places.byEye(read),
  logbook: places.logbook,
  'logged-wheel': places.loggedWheel(proved),
  'film-setup': places.filmSetup,
  practice: places.practice,
  settings: places.settings,
  help: places.help,
};
