/** Words of the settings. */
export const settings = {
  title: 'Settings',
  language: 'Language',
  languages: { en: 'English', de: 'Deutsch' },
  units: 'Units',
  unitNames: { metric: 'metric', 'inch-pound': 'inch and pound' },
  unitExamples: { metric: '20 g · 185 mm', 'inch-pound': '¾ oz · 7¼ in' },
  theme: 'Screen',
  themes: { system: 'as the tablet', light: 'light', dark: 'dark' },
  contrast: 'Stronger contrast',
  contrastHelp: 'Black and white, thicker lines.',
  groups: {
    reading: 'What you read',
    hearing: 'What you hear',
    keeping: 'What is kept',
    about: 'About',
  },
  sound: 'Tones',
  soundHelp: 'Short tones at each event of a sweep, and while a hand is led.',
  voice: 'Spoken words',
  voiceHelp: 'What to do next, said aloud.',
  keepFilms: 'Keep the films',
  keepFilmsHelp: 'So that any sweep can be read again. Some 10 megabytes each.',
  safety: 'Safety notes',
  aboutText:
    'Tiltsweep measures in this browser. Pictures, readings and the logbook never leave this device unless you save them to a file.',
  licences: 'Licences of what is inside',
  browser: 'What this browser cannot do',
  browserLacks: {
    decoder:
      'Take films apart: they are played and measured as they run, some pictures are left out.',
    encoder: 'Record films: sweeps are measured and kept, their films are not.',
    wakeLock:
      'Keep the screen on: set the tablet so that it does not go dark while the wheel turns.',
  },
};
