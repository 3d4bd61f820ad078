import type { lead as enLead, sight as enSight } from '../en/sight.ts';

export const sight: typeof enSight = {
  title: 'Visier',
  opening: 'Kamera wird gestartet',
  ready: 'Alles zu sehen: Messung beginnen',
  startSweep: 'Messung beginnen',
  startCamera: 'Kamera starten',
  cameraWhy:
    'Die Kamera sieht Laserlinie und Profilkante, während das Rad gedreht wird. Die Bilder bleiben auf diesem Gerät.',
  cameraAsk: 'Der Browser fragt, ob sie benutzt werden darf: „Zulassen“ wählen.',
  mayGoDark:
    'Der Bildschirm kann dunkel werden, und die Kamera geht mit aus: das Tablet so einstellen, dass er anbleibt.',
  notFound: 'Dieses Rad ist nicht mehr in der Werkstatt.',
  good: 'gut',
  notYet: 'noch nicht',
  notTried: 'nicht geprüft',
  checks: {
    picture: 'Bild',
    light: 'Licht',
    line: 'Laserlinie',
    edge: 'Profilkante',
    up: 'Nicht kopfüber',
    turn: 'Nicht gespiegelt',
  },
  reversed: {
    up: 'Die Kante ging hoch: Tablet um 180° drehen, oder näher am Visier drücken',
    turn: 'Verkehrt herum gesehen: die rückwärtige Kamera nehmen, oder noch einmal im Uhrzeigersinn',
  },
  tryMirror: 'Diese Kamera spiegelt vielleicht: erst die Druckprobe machen',
  trySigns: 'Druckprobe',
  stopTrial: 'Probe beenden',
  signSteps: {
    settle: 'Rad zur Ruhe kommen lassen',
    press: 'Felge am Visier nach unten drücken',
    turn: 'Ein wenig im Uhrzeigersinn drehen, von oben gesehen',
  },
  camera: 'Kamera',
  noControls: 'Diese Kamera stellt sich selbst ein; von Hand ist hier nichts einzustellen.',
  controls: { exposure: 'Helligkeit', focus: 'Schärfe', zoom: 'Zoom' },
  controlAuto: (control) => `${control}: von selbst`,
  doPicture: 'Auf das erste Bild der Kamera warten',
  doLine: 'Auf das Profil richten: Laserlinie quer durch die Mitte',
  pickEdge:
    'Andere Kante wählen: im Bild antippen, oder das Kreuz mit den Pfeiltasten rücken und Enter drücken',
  pickHint: 'Andere Kante? Im Bild antippen.',
};

export const lead: typeof enLead = {
  title: 'Zur Stelle',
  opening: 'Kamera wird gestartet',
  findTape: 'Drehen, bis das Band am Visier vorbei ist',
  looking: 'Stillhalten, bis das Rad zu sehen ist',
  lost: 'Stillhalten: das Rad ist nicht zu sehen',
  near: 'Langsam.',
  markIt:
    'Den Reifen an der Stelle mit Kreide anzeichnen, dann das Gewicht in einer Linie damit aufkleben.',
  turn: (angle, isClockwise) =>
    `${angle} ${isClockwise ? 'im Uhrzeigersinn' : 'gegen den Uhrzeigersinn'} drehen`,
  stick: (mass) => `${mass} hier aufkleben, am Visier`,
  takeOff: (mass) => `${mass} hier abnehmen, am Visier`,
  stickAt: (mass, where) => `${mass} bei ${where} aufkleben`,
  takeOffAt: (mass, where) => `${mass} bei ${where} abnehmen`,
  step: (now, all) => `Gewicht ${now} von ${all}`,
  isDone: 'Fertig',
  nothing: 'Bei dieser Messung ist nichts aufzukleben.',
  allOn: 'Alle Gewichte sitzen. Zum Nachweis noch einmal messen.',
  notKept: 'Die Gewichte wurden nicht vermerkt. Aufschreiben, dann noch einmal versuchen.',
  tryAgain: 'Noch einmal versuchen',
  prove: 'Nachweisen',
  toWeights: 'Zu den Gewichten',
  noReading: 'Diese Messung ist nicht mehr vorhanden.',
  noted: 'Die Gewichte sind vermerkt.',
};
