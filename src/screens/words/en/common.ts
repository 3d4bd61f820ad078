/** Words that more than one screen uses. Kept apart from the drawing so that a second language fits in. */
export const common = {
  productName: 'Tiltsweep',
  soundOn: 'Sound on',
  soundOff: 'Sound off',
  light: 'Light',
  dark: 'Dark',
  showLight: 'Show light screen',
  showDark: 'Show dark screen',
  back: 'Back',
  heavyHere: 'Heavy',
  lightHere: 'Light',
};
