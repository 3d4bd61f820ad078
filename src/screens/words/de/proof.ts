import type { Words } from '../en/index.ts';

export const proof: Words['proof'] = {
  verdicts: {
    pass: 'Gewuchtet',
    trim: 'Noch nicht ganz: nachwuchten',
    'look-for-another-cause': 'Gewichte allein helfen hier nicht',
  },
  nextPass: 'Das Rad kann wieder ans Fahrzeug.',
  nextTrim: 'Gewichte für den Rest auswählen, dann noch einmal messen.',
  nextCause: 'Erst nach der unten genannten Ursache sehen, dann weiterkleben.',
  close: 'Das ± reicht über die Grenze: eine weitere Messung würde es sicher sagen.',
  causes: {
    dents:
      'Die Platte ist so weich, dass sie Dellen bekommt: das Rad bleibt darin hängen. Platte drehen oder wechseln.',
    seat: 'Das Rad liegt jedes Mal anders auf: Mittelbohrung und Kugel säubern, nach Graten sehen.',
    'run-out':
      'Die Profilkante ist wellig: Felge und Reifen auf Schlag und den Wulst auf Sitz prüfen.',
    'does-not-converge':
      'Zweimal Nachwuchten hat nicht gereicht: Ventilmarke, Gewichte und eingetragenen Radius prüfen.',
  },
  noVerdict: 'Kein Urteil möglich',
  noVerdictWhy:
    'Ein Maß des Rads oder des Gestells kann nicht stimmen. Auf der Werkbank nachsehen.',
  toBench: 'Zur Werkbank',
  toReading: 'Ergebnis ansehen',
  left: 'Übrig',
  before: 'Vorher',
  after: 'Nachher',
  noBefore: 'Es gibt keine frühere Messung dieses Rades zum Vergleich.',
  trim: 'Rest auswählen',
  sweepAgain: 'Noch einmal messen',
  toWheel: 'Zum Rad',
  traceTitle: 'Die Kante vorher und nachher',
  traceText: (before, after) =>
    `Einmal herum stieg und fiel die Kante vorher um ${before}, jetzt um ${after}.`,
  measuresTitle: 'Wie gut ist das',
  scaleText: (left, step, iso) =>
    `${left} sind übrig. Ein Gewicht wiegt ${step}; die Norm für Autoräder erlaubt ${iso}.`,
  oneStep: (step) => `ein Gewicht: ${step}`,
  iso: (figure) => `Norm: ${figure}`,
  practiceNote: 'Ein Gewichtsschritt ist, was die Werkstätten gewöhnlich verlangen.',
  isoNote: (speed) => `Die Norm ist ISO 21940-11, Gütestufe G 40 für Autoräder, bei ${speed}.`,
  force: 'Kraft auf der Straße',
  forceText: (force, speed) => `${force} bei ${speed}, einmal je Umdrehung`,
  response: 'Anstieg je Gramm',
  responseMeasured: (measured) => `${measured}, mit diesen Gewichten gemessen`,
  responseModel: (formula) => `${formula}, berechnet: dazwischen kam kein Gewicht dazu`,
  added: 'Dazwischen angeklebt',
  addedNone: 'nichts',
  couple:
    'Statisches Wuchten sieht keine Momentenunwucht. Wenn das Rad auf der Straße noch zittert: zum Reifenfachbetrieb.',
  refitTitle: 'Zurück ans Fahrzeug',
  refit: [
    'Mit gebeugten Knien oder zu zweit heben; Füße weg vom Rad.',
    'Radmuttern über Kreuz mit dem Drehmomentschlüssel nach Angabe des Herstellers.',
    'Nach der im Handbuch genannten Strecke nachziehen.',
    'Örtliche Vorschriften und das Handbuch des Fahrzeugs gehen vor.',
  ],
};
