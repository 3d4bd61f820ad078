import { places } from '../../../src/screens/shell/places.ts';
import { SHED_WHEEL_IDS } from './shedLogbook.ts';

/** Screens that show what is in the logbook, by name: the address, with the shed of four wheels. */
export const GALLERY_PLACES: Readonly<Record<string, string>> = {
  shed: places.shed,
  'wheel-new': places.wheel(SHED_WHEEL_IDS.neverRead),
  'wheel-read': places.wheel(SHED_WHEEL_IDS.read),
  'wheel-weights': places.wheel(SHED_WHEEL_IDS.weightsOn),
  'wheel-proved': places.wheel(SHED_WHEEL_IDS.proved),
  'bench-new': places.bench(SHED_WHEEL_IDS.neverRead),
  bench: places.bench(SHED_WHEEL_IDS.proved),
  stand: places.stand,
  settings: places.settings,
  help: places.help,
};
