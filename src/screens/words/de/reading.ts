import type { Words } from '../en/index.ts';

export const reading: Words['reading'] = {
  atMost: 'höchstens',
  unnamed: 'Dieses Rad',
  stickOn: (where) => `Aufkleben bei ${where}`,
  stickOnSeveral: (count) => `Aufkleben an ${count} Stellen`,
  lightAt: (where) => `Leicht bei ${where}`,
  noClearSide: 'Keine Seite ist deutlich schwer',
  stickOneNext: (mass) => `${mass} dort aufkleben, dann zur Probe noch einmal messen.`,
  stickSeveralNext: (list) => `${list} aufkleben, dann zur Probe noch einmal messen.`,
  takeOffNext: (mass, clock) => `${mass} bei ${clock} abnehmen, dann zur Probe noch einmal messen.`,
  placeInList: (mass, clock) => `${mass} bei ${clock}`,
  takeOffInList: (mass, clock) => `minus ${mass} bei ${clock}`,
  nothingNext: (step) => `Nichts aufkleben: ein Gewicht von ${step} macht es nicht besser.`,
  balancedNext: (step) => `Nichts aufkleben: weniger als ein Gewicht von ${step}.`,
  unsureNext: 'Noch nichts aufkleben: Rad zur Ruhe kommen lassen und noch einmal messen.',
  and: ' und ',
  amountScaleText: (figure, weights) =>
    `Am Gewichtsradius fehlen ${figure}. Gewichte zum Aufkleben: ${weights}.`,
  noWeights: 'keine',
  heavySpot: 'Schwere Stelle',
  lightSpot: 'Leichte Stelle',
  weights: 'Gewichte zum Aufkleben',
  left: 'Danach übrig',
  unknown: 'nicht bekannt',
  plusMinusNote: '± ist der Bereich, der den wahren Wert in 95 von 100 Fällen enthält.',
  wheelTitle: 'Das Rad von oben, Ventil bei 12',
  download: 'Ergebnis speichern',
  sweepAgain: 'Noch einmal messen',
  readSampleAgain: 'Noch einmal auswerten',
  readFilmAgain: 'Angaben ändern',
  toWeights: 'Gewichte auswählen',
  toProof: 'Zum Nachweis',
  toByEye: 'Eigene Schätzung prüfen',
  toWheel: 'Zum Rad',
  assumedNames: {
    'wheel.massKg': 'Masse',
    'wheel.edgeRadiusMm': 'Mitte bis Profilkante',
    'wheel.weightRadiusMm': 'Mitte bis Gewichte',
    'stand.ballDiameterMm': 'Kugel',
    'stand.pendulumDepthMm': 'Tiefe des Schwerpunkts',
    'camera.downTiltDeg': 'Neigung der Kamera',
  },
  traceTitle: 'Kante gegen Linie, einmal ums Rad',
  traceHeight: (unit) => `Kante über der Linie, ${unit}`,
  outlineTitle: 'Umriss des Reifens, einmal ums Rad',
  outlineHeight: (unit) => `Umriss, auf und ab, ${unit}`,
  traceResidual: (unit) => `neben der Welle, ${unit}`,
  tracePoints: 'gemessen',
  traceWave: 'angepasste Welle, einmal herum',
  traceOwnWave: 'eigene Form der Kante',
  traceText: (rise, high, scatter) =>
    `Die Kante steigt bei ${high} um ${rise} über ihr Mittel und sinkt gegenüber ebenso weit. Die Punkte liegen im Mittel ${scatter} neben der Welle.`,
  detailsTitle: 'Wie es gefunden wurde',
  standLean: 'Neigung des Gestells',
  standLeanText: (lean, mm, direction) => `${lean}, ${mm} an der Kante, hohe Seite ${direction}`,
  standLeanUntold: (lean, mm) =>
    `${lean}, ${mm} an der Kante: zu wenig, um aus einem Blick zu sagen, welche Seite hoch steht.`,
  standLeanNote:
    'Sie bleibt im Raum stehen, während sich das Rad dreht, und ist aus den Zahlen herausgerechnet.',
  standDrawing: 'Das Gestell von oben, Kamera unten',
  standLeanDrawing: 'Das Gestell von oben, Kamera unten, mit der hohen Seite',
  response: 'Hub an der Kante',
  responseText: (rise) => `${rise} je Gramm am Gewichtsradius`,
  responseModel: 'berechnet aus Masse und Tiefe der Angaben',
  responseTrial: 'gemessen an den Gewichten, die seit der vorigen Messung aufgeklebt wurden',
  turn: 'Drehung',
  turnText: (covered, sense) => `${covered} ${sense}`,
  clockwise: 'im Uhrzeigersinn',
  counterClockwise: 'gegen den Uhrzeigersinn',
  closure: (off) =>
    `an derselben Profilstelle geschlossen; Maßstabsfehler von ${off} herausgerechnet`,
  edge: 'Verfolgt',
  edgeKinds: {
    rib: 'Kante einer Rippe oder Rille',
    blocks: 'Lücken zwischen Blöcken, die von Block zu Block springen',
    band: 'helles Klebeband',
    outline: 'Umriss des Reifens vor dem Boden',
  },
  edgeText: (kind, seen, scatter) =>
    `${kind}; an ${seen} der Stellen gesehen, auf ${scatter} am errechneten Verlauf`,
  bandTold: (mm) => `mindestens ${mm} schief geklebt, am Profil daneben erkannt und herausgelassen`,
  bandUntold: 'wie schief es klebt, ist nicht bekannt',
  signs: 'Druckprobe',
  signsUp: { confirmed: 'nicht kopfüber', reversed: 'kopfüber', untried: 'oben nicht geprüft' },
  signsTurn: {
    confirmed: 'nicht gespiegelt',
    reversed: 'gespiegelt',
    untried: 'Drehsinn nicht geprüft',
  },
  screwTurns: (list) => `Zum Ausrichten der Platte: ${list}.`,
  screwTurn: (screw, turns, isClockwise) =>
    `Schraube ${screw} um ${turns} Umdrehung ${isClockwise ? 'im Uhrzeigersinn' : 'gegen den Uhrzeigersinn'}`,
  screwsUnsure:
    'Die Neigung ist zu ungenau bekannt, um eine Schraube zu nennen: noch einmal messen.',
  rocking: 'Schaukeln',
  rockingText: (period) => `einmal in ${period}`,
  contributions: 'Woher das ± kommt',
  contributionNames: {
    'reading noise': 'Rauschen',
    rocking: 'Schaukeln',
    'height scale': 'Maßstab der Höhen',
    mark: 'Ort des Bandes',
    response: 'Hub je Gramm',
    'run-out allowance': 'Zuschlag für Seitenschlag',
    'radial run-out allowance': 'Zuschlag für Höhenschlag',
    'place of the edge': 'was der Ort der Kante offen lässt',
    'creep beside the outline': 'seitliches Wandern, das der Umriss nicht zeigt',
    'band allowance': 'Zuschlag für ein schief geklebtes Band',
  },
  couple:
    'Statisches Wuchten sieht keine Momentenunwucht: zwei schwere Stellen auf gegenüberliegenden Seiten des Rads. Zittert das Rad weiter, hilft der Reifenfachbetrieb.',
  warningsTitle: 'Zu bedenken',
  refusedTitle: 'Kein Ergebnis',
  evidence: 'Was zu sehen war',
  refusedAlso: 'Außerdem',
};

export const warnings: Words['warnings'] = {
  assumed: (list) =>
    `Angenommen, nicht gemessen: ${list}. Die Gramm sind nur so gut wie diese Werte.`,
  standLean: (mm, direction) =>
    `Das Gestell neigt sich: ${mm} an der Kante, hohe Seite ${direction}. Bei Gelegenheit die Platte ausrichten.`,
  left: (left) => `${left} bleiben mit diesen Gewichten übrig: mehr als ein halbes Gewicht.`,
  wideAngle: (plusMinus) =>
    `Die Stelle ist nur auf ${plusMinus} bekannt. Eine zweite Messung macht sie genauer.`,
};

export const readingWarnings: Words['readingWarnings'] = {
  'sense-unconfirmed': {
    cause:
      'Gelesen als gegen den Uhrzeigersinn gedreht; niemand hat es bestätigt. Wurde im Uhrzeigersinn gedreht, ist das Bild gespiegelt und die Stelle auf der falschen Seite des Ventils.',
    remedy:
      'In den Angaben eintragen, wie herum gedreht wurde, und den Film noch einmal lesen; vor der Kamera einmal die Druckprobe machen.',
  },
  'clockwise-unconfirmed': {
    cause:
      'Gelesen als im Uhrzeigersinn gedreht; niemand hat es bestätigt. Wurde gegen den Uhrzeigersinn gedreht, ist das Bild gespiegelt und die Stelle auf der falschen Seite des Ventils.',
    remedy:
      'In den Angaben eintragen, wie herum gedreht wurde, und den Film noch einmal lesen; vor der Kamera einmal die Druckprobe machen.',
  },
  'edge-assumed': {
    cause:
      'Die Profilkante war neben der Laserlinie nirgends zu sehen, und niemand hat sie im Bild angetippt. Angenommen wurde, dass sie unter der Linie liegt; die Neigung wurde an den anderen Rillen gelesen; das ± ist um das größer, was damit offen bleibt.',
    remedy:
      'Vor der Messung die Kante im Bild antippen; oder die Linie einige Millimeter neben die Kante stellen oder den Laser abdunkeln und noch einmal messen.',
  },
  'line-in-groove': {
    cause:
      'Die Laserlinie lag ringsum in der Rille unter der Kante und nicht auf der Rippe. Die Kamera wurde aus dem Grund der Rille bestimmt, dessen Tiefe mit zu finden war; das ± ist um diesen Zweifel größer.',
    remedy:
      'Für eine genauere Messung die Linie auf die Rippe neben der Kante stellen, so dass die Kante einige Millimeter unter ihr liegt, und noch einmal messen.',
  },
  'band-alone': {
    cause:
      'Verfolgt wurde ein helles Klebeband um die Schulter; sonst läuft an diesem Profil nichts ringsum. Klebt das Band schief, sieht das aus wie eine Unwucht; das ± ist um das größer, was eine Hand verfehlen kann.',
    remedy:
      'Den Abstand des Bands von einer Formlinie der Flanke an vier Stellen messen, es neu kleben, wo er um mehr als einen halben Millimeter abweicht, und noch einmal messen; oder auf zwei Kugeln messen.',
  },
  'outline-alone': {
    cause:
      'An diesem Profil läuft nichts ringsum, verfolgt wurde deshalb der Umriss des Reifens vor dem Boden. Wie rund seine Schulter ist, weiß niemand; das ± ist um das größer.',
    remedy:
      'Für eine genauere Messung ein helles Klebeband auf einen halben Millimeter genau um die Schulter kleben und noch einmal messen. Hinter dem unteren Rand des Reifens nichts auf dem Boden liegen lassen.',
  },
  'picture-sways': {
    cause:
      'Das Bild schwankte während der Messung hin und her, wie bei einem Tablet an einem federnden Arm. Das Schwanken wurde vom Schaukeln des Rads getrennt und herausgelassen; das ± ist dadurch größer.',
    remedy:
      'Für eine genauere Messung den Arm festsetzen, die Hände von der Werkbank lassen und noch einmal messen.',
  },
  'camera-may-mirror': {
    cause:
      'Es war die Kamera auf der Vorderseite. Manche spiegelt das Bild: die Stelle läge dann auf der falschen Seite des Ventils.',
    remedy:
      'Etwas Gedrucktes vor die Kamera halten: ist es im Bild nicht lesbar, die Kamera auf der Rückseite nehmen.',
  },
};
