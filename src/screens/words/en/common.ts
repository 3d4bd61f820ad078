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
  /** How a value came to be known. */
  origins: { measured: 'measured', entered: 'entered', assumed: 'assumed' },
  originPress: {
    entered: 'Press when it is right.',
    assumed: 'Press to mark it as assumed.',
    measured: 'Press when it was measured.',
  },
  less: (name: string) => `${name}: less`,
  more: (name: string) => `${name}: more`,
  back: 'Back',
  heavyHere: 'Heavy',
  lightHere: 'Light',
};
