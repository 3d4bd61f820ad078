/** Words that more than one screen uses. Kept apart from the drawing so that a second language fits in. */
export const common = {
  productName: 'Tiltsweep',
  soundOn: 'Sound on',
  soundOff: 'Sound off',
  help: 'Help',
  settings: 'Settings',
  /** What the way up is called. */
  placeNames: { shed: 'Shed', wheel: 'Wheel', logbook: 'Logbook' },
  undo: 'Undo',
  close: 'Close',
  done: 'Done',
  less: (name: string) => `${name}: less`,
  more: (name: string) => `${name}: more`,
  back: 'Back',
  heavyHere: 'Heavy',
  lightHere: 'Light',
};
