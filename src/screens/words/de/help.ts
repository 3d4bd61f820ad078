import type { Words } from '../en/index.ts';

export const help: Words['help'] = {
  title: 'Hilfe',
  open: 'Hilfe zu diesem Bildschirm',
  all: 'Hilfe zu allen Bildschirmen',
  topics: {
    shed: {
      name: 'Die Werkstatt',
      lines: [
        'Hier hängt ein Rad vom ersten Maß an, bis es herausgenommen wird.',
        'Sein Zeichen sagt, wo es steht; der dunkle Knopf, was als Nächstes kommt.',
        'Die Tür nimmt es heraus. Im Logbuch bleibt es.',
      ],
    },
    wheel: {
      name: 'Ein Rad',
      lines: [
        'Die Schritte hängen am Lot: Haken fertig, Lot jetzt, kleiner Ring später.',
        'Der dunkle Knopf führt zum nächsten Schritt.',
        'Darunter: alles, was getan wurde, und von Hand gesetzte Gewichte.',
      ],
    },
    bench: {
      name: 'Die Werkbank',
      lines: [
        'Rad wiegen, bis zur Kante und bis zu den Gewichten messen.',
        'Der Schwerpunkt muss unter der Kugelmitte hängen, sonst kippt das Rad.',
        'Volle Scheibe gemessen, halbe eingetragen, gebrochener Ring angenommen.',
      ],
    },
    stand: {
      name: 'Das Gestell',
      lines: [
        'Eine harte, ebene Platte auf drei Schrauben, darauf eine Stahlkugel.',
        'Der Laser an der Seite wirft eine waagerechte Linie auf die Lauffläche.',
        'Das Tablet blickt an einem Arm auf die Linie hinab.',
      ],
    },
    sight: {
      name: 'Das Visier',
      lines: [
        'So ausrichten, dass Linie und Profilkante durch die Mitte laufen.',
        'Klebeband auf der Lauffläche in Höhe des Ventils.',
        'Felge unter der Kamera drücken: die Kante muss unter die Linie sinken.',
      ],
    },
    sweep: {
      name: 'Die Drehung',
      lines: [
        'Von der fernen Seite drehen, langsam, im Uhrzeigersinn: eine Drehung in einer halben Minute.',
        'Der Ring füllt sich mit der Drehung. Etwas mehr als einmal herum.',
        'Die Messung endet von selbst. Rad loslassen.',
      ],
    },
    reading: {
      name: 'Das Ergebnis',
      lines: [
        'Der volle Tropfen hängt an der schweren Stelle.',
        'Der offene Ring schwebt an der leichten Stelle: dorthin gehört Gewicht.',
        'Der Keil zeigt, wie genau die Stelle bekannt ist.',
      ],
    },
    weights: {
      name: 'Gewichte und geführte Hand',
      lines: [
        'Rad drehen, bis die Stelle am Visier steht, dann anzeichnen.',
        'Den Block aufkleben, seine Mitte am Strich.',
        'Gesperrte Bereiche bleiben frei: die Gewichte gehen auf beide Seiten davon.',
      ],
    },
    proof: {
      name: 'Die Probe',
      lines: [
        'Eine zweite Drehung mit den Gewichten daran.',
        'Weniger als ein Gewicht übrig: das Rad ist fertig.',
        'Bleibendes Zittern heilt statisches Wuchten nicht: zum Reifenfachbetrieb.',
      ],
    },
    byEye: {
      name: 'Nach Augenmaß',
      lines: [
        'Suchen, wo die Kante am höchsten über der Linie steht: diese Seite ist leicht.',
        'Stelle und Gewicht schätzen, bevor das Gemessene zu sehen ist.',
        'Der Unterschied zeigt, wie gut das Auge ist.',
      ],
    },
  },
};
