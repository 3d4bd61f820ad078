import type { Words } from '../en/index.ts';

export const common: Words['common'] = {
  productName: 'Tiltsweep',
  soundOn: 'Ton an',
  soundOff: 'Ton aus',
  help: 'Hilfe',
  settings: 'Einstellungen',
  placeNames: { shed: 'Werkstatt', wheel: 'Rad', logbook: 'Logbuch' },
  undo: 'Rückgängig',
  close: 'Schließen',
  done: 'Fertig',
  origins: { measured: 'gemessen', entered: 'eingetragen', assumed: 'angenommen' },
  originPress: {
    entered: 'Drücken, wenn der Wert stimmt.',
    assumed: 'Drücken, um ihn als angenommen zu kennzeichnen.',
    measured: 'Drücken, wenn er gemessen wurde.',
  },
  less: (name) => `${name}: weniger`,
  more: (name) => `${name}: mehr`,
  back: 'Zurück',
  heavyHere: 'Schwer',
  lightHere: 'Leicht',
};
