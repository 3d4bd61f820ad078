import type { Words } from '../en/index.ts';

export const settings: Words['settings'] = {
  title: 'Einstellungen',
  language: 'Sprache',
  languages: { en: 'English', de: 'Deutsch' },
  units: 'Einheiten',
  unitNames: { metric: 'metrisch', 'inch-pound': 'Zoll und Pfund' },
  unitExamples: { metric: '20 g · 185 mm', 'inch-pound': '¾ oz · 7¼ in' },
  theme: 'Bildschirm',
  themes: { system: 'wie das Tablet', light: 'hell', dark: 'dunkel' },
  contrast: 'Mehr Kontrast',
  contrastHelp: 'Schwarz und Weiß, kräftigere Linien.',
  groups: {
    reading: 'Was zu lesen ist',
    hearing: 'Was zu hören ist',
    keeping: 'Was behalten wird',
    about: 'Über das Programm',
  },
  sound: 'Töne',
  soundHelp: 'Kurze Töne bei jedem Ereignis einer Messung und beim Führen der Hand.',
  voice: 'Gesprochene Worte',
  voiceHelp: 'Was als Nächstes zu tun ist, laut gesagt.',
  keepFilms: 'Filme behalten',
  keepFilmsHelp: 'So lässt sich jede Messung noch einmal auswerten. Je etwa 10 Megabyte.',
  safety: 'Sicherheitshinweise',
  aboutText:
    'Tiltsweep misst in diesem Browser. Bilder, Ergebnisse und Logbuch verlassen dieses Gerät nur, wenn sie als Datei gesichert werden.',
  licences: 'Lizenzen der Bestandteile',
  browser: 'Was dieser Browser nicht kann',
  browserLacks: {
    decoder: 'Filme zerlegen: sie werden abgespielt und dabei gemessen, einige Bilder fallen weg.',
    encoder: 'Filme aufnehmen: gemessen und behalten wird die Drehung, ihr Film nicht.',
    wakeLock:
      'Den Bildschirm anlassen: das Tablet so einstellen, dass es beim Drehen nicht dunkel wird.',
  },
};
