import type { Words } from '../en/index.ts';

export const shed: Words['shed'] = {
  title: 'Räder in der Werkstatt',
  firstTitle: 'Rad einmal drehen. Ablesen, wo es schwer ist.',
  firstLead:
    'Das Rad liegt auf einer Stahlkugel. Die leichte Stelle steht über der Laserlinie; dorthin gehört Gewicht.',
  ways: 'Was zu tun ist',
  firstWheel: 'Das erste Rad',
  firstWheelHelp: 'Vermessen, drehen, Gewichte aufkleben, prüfen.',
  anotherWheel: 'Noch ein Rad',
  anotherWheelHelp: 'Übernimmt die Maße des letzten.',
  practise: 'Üben',
  practiseHelp: 'Ein gezeichnetes Rad zum Wuchten, ganz ohne Gestell.',
  sample: 'Beispiel ansehen',
  sampleHelp: 'Ein Film einer Drehung, fertig zum Auswerten.',
  film: 'Film öffnen',
  filmHelp: 'Eine aufgenommene Drehung mit Einstelldatei. Oder die Dateien hier ablegen.',
  camera: 'Schnell messen',
  cameraHelp: 'Eine Drehung, ohne das Rad vorher einzutragen.',
  stand: 'Das Gestell',
  standHelp: 'Kugeln, Platte, Schrauben, Kamera, Gewichte.',
  logbook: 'Logbuch',
  logbookHelp: 'Alle Räder und Messungen.',
  brokenOff:
    'Eine Umdrehung brach vor ihrem Ergebnis ab. Was von ihr gemessen ist, liegt im Logbuch.',
  wheelName: (index) => `Rad ${index}`,
};
