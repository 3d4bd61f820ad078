import type { Words } from '../en/index.ts';

export const setup: Words['setup'] = {
  cameraTitle: 'Rad und Gestell',
  filmTitle: 'Angaben zu diesem Film',
  filmLead: (name) =>
    `${name} kam ohne Einstelldatei. Was war es für ein Rad, und wie sah die Kamera darauf?`,
  cameraLead: 'Bekanntes ist besser als Angenommenes. Die Gramm hängen an Masse und Tiefe.',
  groups: { wheel: 'Rad', stand: 'Gestell', camera: 'Kamera', mark: 'Klebeband und Gewichte' },
  assumed: 'angenommen',
  known: 'bekannt',
  assumedHelp:
    'Mit „angenommen“ markierte Werte sind Vorschläge. Marke drücken, wenn ein Wert stimmt.',
  markKnown: (name) => `${name}: angenommen. Drücken, wenn es stimmt`,
  markAssumed: (name) => `${name}: bekannt. Drücken, um es als angenommen zu markieren`,
  optional: 'darf leer bleiben',
  colour: 'Farbe des Klebebands',
  colourHelp: 'Das Band auf der Lauffläche in Höhe des Ventils.',
  colours: {
    white: 'weiß',
    yellow: 'gelb',
    blue: 'blau',
    red: 'rot',
    green: 'grün',
    orange: 'orange',
  },
  edge: 'Kante wie im Film angetippt',
  edgeHelp: 'Aus: das Programm sucht die Kante selbst.',
  sense: 'Das Rad wird gedreht',
  senseHelp: 'Von oben gesehen. Ein gespiegeltes Bild fällt dann auf.',
  senses: {
    unsaid: 'wie es kommt',
    clockwise: 'im Uhrzeigersinn',
    'counter-clockwise': 'gegen den Uhrzeigersinn',
  },
  label: 'Name dieses Rads',
  labelHelp: 'Für das gespeicherte Ergebnis.',
  device: 'Kamera',
  deviceAny: 'Die auf der Rückseite',
  deviceUnnamed: (index) => `Kamera ${index + 1}`,
  start: 'Messung beginnen',
  readFilm: 'Film auswerten',
  fields: {
    'wheel.massKg': {
      name: 'Masse',
      help: 'Rad mit Reifen, auf der Personenwaage.',
    },
    'wheel.edgeRadiusMm': {
      name: 'Mitte bis Profilkante',
      help: 'Von der Radmitte bis zur Rillen- oder Schulterkante an der Laserlinie.',
    },
    'wheel.weightRadiusMm': {
      name: 'Mitte bis Gewichte',
      help: 'Von der Radmitte bis dorthin, wo die Gewichte sitzen.',
    },
    'wheel.boreDiameterMm': {
      name: 'Mittelloch, Durchmesser',
      help: 'Das Loch, das auf der Kugel sitzt.',
    },
    'stand.ballDiameterMm': {
      name: 'Kugel, Durchmesser',
      help: 'Durchmesser der Stahlkugel.',
    },
    'stand.pendulumDepthMm': {
      name: 'Tiefe des Schwerpunkts',
      help: 'Wie weit der Schwerpunkt des Rads unter der Kugelmitte hängt.',
    },
    'stand.lineAbovePlateMm': {
      name: 'Laserlinie über der Platte',
      help: 'Mit dem Lineal, auf ein bis zwei Millimeter.',
    },
    'camera.downTiltDeg': {
      name: 'Kamera blickt nach unten um',
      help: '0 ist waagerecht, 90 senkrecht nach unten. Eine Wasserwaage auf dem Tablet zeigt es.',
    },
    'camera.horizontalFovDeg': {
      name: 'Kamera sieht in der Breite',
      help: 'Bildwinkel aus dem Datenblatt. Bleibt das Feld leer, ergibt er sich aus der Drehung.',
    },
    'sight.valveMark.widthMm': {
      name: 'Breite des Klebebands',
      help: 'Das Band auf der Lauffläche in Höhe des Ventils, entlang der Lauffläche gemessen.',
    },
    weightStepG: {
      name: 'Ein Gewicht',
      help: 'Das kleinste Stück, das aufgeklebt wird.',
    },
  },
  after: {
    title: 'Gewichte seit einer früheren Messung',
    help: 'Was vor diesem Film aufgeklebt oder abgenommen wurde. Wie weit das Rad je Gramm steigt, ist dann gemessen.',
    remove: (weight) => `Weglassen: ${weight}`,
    choose: 'Frühere Messung wählen',
    noEarlier: 'Die Datei, in der die frühere Messung gesichert wurde.',
    earlier: (name) => `Frühere Messung: ${name}`,
    needsEarlier: 'Die frühere Messung wählen oder die Gewichte weglassen.',
  },
  missing: 'Bitte einen Wert eintragen.',
  notANumber: 'Bitte eine Zahl eintragen, etwa 16,5.',
  tooSmall: (limit) => `Mindestens ${limit}.`,
  tooLarge: (limit) => `Höchstens ${limit}.`,
  cannotBeRight: 'Das kann nicht stimmen.',
  fixFirst: (count) =>
    count === 1 ? 'Ein Wert ist noch zu prüfen:' : `${count} Werte sind noch zu prüfen:`,
  laserCaution: 'Laser nur während der Messung an. Augen über dem Strahl, Füße weg vom Rad.',
};
