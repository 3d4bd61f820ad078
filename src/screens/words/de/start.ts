import type { Words } from '../en/index.ts';

export const start: Words['start'] = {
  dropHere: 'Loslassen, um die Filme zu öffnen',
  cautionsTitle: 'Vor dem Anfang',
  cautionsUnderstood: 'Verstanden',
  enterSetup: 'Angaben von Hand eintragen',
  drawnHeavy: 'schwer',
  drawnLight: 'leicht',
  drawingText:
    'Das Rad liegt flach auf einer Stahlkugel. Die schwere Seite sinkt unter die waagerechte Laserlinie, die leichte steht darüber.',
};

export const cautions: Words['cautions'] = [
  {
    about: 'Laser',
    say: 'Höchstens Klasse 2. Nicht hineinsehen, auch nicht in den Glanz auf der Felge oder durch eine Linse. Strahl unter Augenhöhe halten.',
  },
  {
    about: 'Rad auf der Kugel',
    say: 'Es kann abrollen. Gestell niedrig halten, Füße weg.',
  },
  { about: 'Heben', say: 'In die Knie gehen oder zu zweit heben.' },
  {
    about: 'Zurück am Fahrzeug',
    say: 'Muttern über Kreuz mit dem Drehmomentschlüssel nach Herstellerangabe anziehen und nach der Strecke laut Handbuch nachziehen.',
  },
  {
    about: 'Reifenfachbetrieb',
    say: 'Beschädigte, alte oder reparierte Reifen und bleibendes Zittern gehören in fachkundige Hände.',
  },
  {
    about: 'Vor allem anderen',
    say: 'Örtliche Vorschriften und das Handbuch des Fahrzeugs gehen allem hier vor.',
  },
];
