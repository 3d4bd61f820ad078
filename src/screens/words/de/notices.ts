import type { Words } from '../en/index.ts';
import { storageNotices } from './storageNotices.ts';

/** Ursache, Abhilfe und was beim zweiten Mal zu tun ist. */
export const notices: Words['notices'] = {
  'turn-incomplete': {
    cause: 'Das Rad wurde vor der Kamera nicht ganz herumgedreht.',
    remedy: 'Noch einmal messen: langsam eine volle Drehung und ein wenig mehr.',
    secondTime:
      'Mit dem Klebeband kurz vor dem Visier anfangen und drehen, bis es zweimal vorbeigekommen ist.',
  },
  'line-lost': {
    cause: 'Die Laserlinie war einen guten Teil der Drehung nicht auf der Lauffläche zu sehen.',
    remedy:
      'Prüfen, ob der Laser an ist und waagerecht auf der Schulter liegt, Reifen beschatten, noch einmal messen.',
    secondTime:
      'Batterie des Lasers wechseln, ihn näher heranrücken, die Werkstatt abdunkeln, noch einmal messen.',
  },
  'edge-lost': {
    cause: 'Die Profilkante ließ sich nicht rund um das Rad verfolgen.',
    remedy:
      'Lauffläche abwischen, gleichmäßig beleuchten, eine durchgehende Kante wählen, noch einmal messen.',
    secondTime:
      'Eine andere Kante wählen: die äußere Schulterrille ist meist am klarsten. Auf einem Profil ohne Rille ein helles Klebeband rechtwinklig rund um die Schulter kleben.',
  },
  'edge-ambiguous': {
    cause: 'Zwei Profilkanten sehen gleich aus und liegen zu nah beieinander.',
    remedy:
      'Eine andere Kante im Bild antippen, die für sich steht: die äußere Schulterrille ist meist am klarsten.',
    secondTime:
      'Ein helles Klebeband rund um die Schulter kleben, dessen untere Kante antippen, noch einmal messen.',
  },
  'mark-missing': {
    cause: 'Das Klebeband am Ventil wurde auf der Lauffläche nicht gefunden.',
    remedy:
      'Band in Höhe des Ventils quer über die Schulter kleben, Farbe und Breite eintragen, noch einmal messen.',
    secondTime: 'Frisches, mattes weißes Band nehmen, etwa 22 mm breit, bis über die Kante.',
  },
  'mark-ambiguous': {
    cause: 'Mehr als ein Klebeband könnte das am Ventil sein.',
    remedy:
      'Das andere Band abziehen oder am Ventil eine andere Farbe oder Breite nehmen, noch einmal messen.',
    secondTime: 'Nur ein Band auf der Lauffläche lassen.',
  },
  'turn-uncertain': {
    cause: 'Die Drehung ließ sich nicht sicher verfolgen.',
    remedy: 'Lauffläche besser beleuchten, langsamer und gleichmäßiger drehen, noch einmal messen.',
    secondTime:
      'Kreide auf die Lauffläche reiben, damit das Muster hervortritt, noch einmal messen.',
  },
  'camera-moved': {
    cause: 'Die Kamera hat sich während der Drehung bewegt.',
    remedy: 'Tablet so festklemmen, dass es weder zittert noch absinkt, noch einmal messen.',
    secondTime: 'Den Arm gegen die Werkbank abstützen und das Tablet beim Drehen nicht berühren.',
  },
  'picture-mirrored': {
    cause: 'Das Rad dreht sich im Bild andersherum: das Bild ist gespiegelt.',
    remedy:
      'Die Kamera auf der Rückseite nehmen oder das Spiegeln abschalten. Wurde andersherum gedreht, das eintragen.',
    secondTime:
      'Etwas Gedrucktes vor die Kamera halten: es muss im Bild lesbar sein. Dann noch einmal messen.',
  },
  'picture-upside-down': {
    cause: 'Das Bild steht auf dem Kopf: die nahe Seite des Rads ist oben.',
    remedy:
      'Tablet um eine halbe Drehung wenden, sodass die nahe Seite des Rads unten liegt, noch einmal messen.',
    secondTime:
      'Bildschirmdrehung sperren, die nahe Seite des Rads unten; einen Film vor dem Auswerten umdrehen.',
  },
  'view-blocked': {
    cause: 'Vor der Lauffläche stand etwas.',
    remedy:
      'Die Lauffläche frei machen, von der fernen Seite drehen, Hand weg von der Kamera, noch einmal messen.',
    secondTime: 'Den Reifen oben gegenüber der Kamera anfassen.',
  },
  'too-dark': {
    cause: 'Das Bild ist zu dunkel, um die Lauffläche zu sehen.',
    remedy: 'Lampe neben der Kamera einschalten, noch einmal messen.',
    secondTime: 'Lampe näher heranrücken; das Profil muss im Bild mit bloßem Auge klar sein.',
  },
  'too-bright': {
    cause: 'Das Bild ist zu hell, um Laserlinie oder Lauffläche zu sehen.',
    remedy: 'Reifen vor Sonne und Lampen abschirmen, noch einmal messen.',
    secondTime: 'Bei geschlossenem Tor oder in der Dämmerung arbeiten.',
  },
  'too-fast': {
    cause: 'Das Rad drehte sich zu schnell für die Kamera.',
    remedy: 'Langsamer drehen: eine Drehung in etwa einer halben Minute.',
    secondTime: 'Für eine Drehung langsam bis dreißig zählen.',
  },
  'too-few-frames': {
    cause: 'Es waren zu wenige Bilder für ein Ergebnis.',
    remedy: 'Die ganze Drehung aufnehmen, etwa eine halbe Minute, noch einmal messen.',
    secondTime: 'Andere Programme auf dem Tablet schließen, noch einmal messen.',
  },
  'rocking-too-strong': {
    cause: 'Das Rad schaukelte zu stark für eine verlässliche Zahl.',
    remedy: 'Rad zur Ruhe kommen lassen, mit leichter Hand drehen, noch einmal messen.',
    secondTime: 'Eine kleinere Kugel nehmen: damit schaukelt das Rad weniger.',
  },
  'wheel-changed': {
    cause: 'Die schwere Seite des Rades wechselte beim Messen.',
    remedy:
      'Ein Gewicht mag abgegangen oder das Rad auf der Kugel verrutscht sein: beides prüfen, noch einmal messen.',
    secondTime:
      'Lose Gewichte abnehmen, Kugel und Bohrung abwischen, Rad zur Ruhe kommen lassen, mit leichter Hand drehen.',
  },
  'lean-too-large': {
    cause: 'Das Rad neigte sich weiter, als die Kamera folgen kann.',
    remedy:
      'Probegewicht auf die hohe Seite setzen oder eine kleinere Kugel nehmen, noch einmal messen.',
    secondTime: 'Zuerst die Platte ausrichten, dann eine kleinere Kugel nehmen.',
  },
  'setup-invalid': {
    cause: 'In den Angaben fehlt ein Wert, oder einer kann nicht stimmen.',
    remedy: 'Den unten genannten Wert berichtigen, dann noch einmal auswerten.',
    secondTime: 'Die Angaben neu im Formular eintragen, statt die Datei zu ändern.',
  },
  'earlier-sweep-missing': {
    cause: 'Dies ist eine Probemessung, und die Messung davor fehlt oder hat kein Ergebnis.',
    remedy: 'Die vorige Messung zusammen mit dieser öffnen.',
    secondTime: 'Zuerst die vorige Messung auswerten und speichern, dann beide öffnen.',
  },
  'weight-elsewhere': {
    cause: 'Das Rad antwortete nicht auf der Seite, an der die Gewichte eingetragen sind.',
    remedy:
      'Uhrzeit jedes Gewichts prüfen, und ob das Band am Ventil noch an seinem Platz ist, dann neu auswerten.',
    secondTime:
      'Gewichte abnehmen, messen, ein Gewicht aufkleben, seine Stelle vom Ventil aus eintragen, messen.',
  },
  'file-unreadable': {
    cause: 'Die Datei ist kein Film, der sich hier lesen lässt.',
    remedy: 'Einen Film von einer Kamera wählen (MP4 oder WebM).',
    secondTime: 'Die Drehung mit der Kamera dieses Programms aufnehmen.',
  },
  'film-missing': {
    cause: 'Unter den Dateien ist kein Film.',
    remedy: 'Film und Einstelldatei zusammen wählen.',
    secondTime:
      'Strg halten (am Tablet lange drücken), um zwei Dateien zu wählen: .mp4 und .setup.json.',
  },
  'film-several': {
    cause: 'Unter den Dateien ist mehr als ein Film.',
    remedy: 'Einen Film und seine Einstelldatei wählen.',
    secondTime: 'Die Messungen nacheinander auswerten, die frühere zuerst.',
  },
  'film-empty': {
    cause: 'Die Filmdatei ist leer.',
    remedy: 'Den Film noch einmal von der Kamera kopieren und die Kopie wählen.',
    secondTime: 'Noch einmal aufnehmen: diese Datei enthält nichts.',
  },
  'film-cut-off': {
    cause: 'Der Film bricht vor dem Ende ab.',
    remedy: 'Die ganze Datei noch einmal von der Kamera kopieren, dann auswerten.',
    secondTime: 'Noch einmal aufnehmen und warten, bis die Kamera gespeichert hat.',
  },
  'film-too-long': {
    cause:
      'Der Film ist länger, als auf einmal gelesen wird; nur sein erster Teil wurde ausgewertet.',
    remedy: 'Den Film auf die eine langsame Umdrehung kürzen, dann noch einmal auswerten.',
    secondTime: 'Nur die Umdrehung aufnehmen: eine Minute reicht gut.',
  },
  'film-played': {
    cause:
      'Dieser Browser kann den Film nicht zerlegen; er wurde abgespielt und dabei ausgewertet.',
    remedy: 'Nichts zu tun; Bilder, die zu schnell kamen, wurden ausgelassen.',
    secondTime: 'In einem anderen Browser auswerten, damit jedes Bild gemessen wird.',
  },
  'film-coding-unknown': {
    cause: 'Dieser Browser kann die Art, wie der Film kodiert ist, nicht lesen.',
    remedy: 'In einem anderen Browser öffnen oder in H.264 aufnehmen („größte Kompatibilität“).',
    secondTime: 'Die Drehung mit der Kamera dieses Programms aufnehmen.',
  },
  'setup-missing': {
    cause: 'Neben dem Film liegt keine Einstelldatei.',
    remedy: 'Film und .setup.json zusammen wählen.',
    secondTime: 'Das Formular ausfüllen, neben dem Film speichern, dann beide wählen.',
  },
  'setup-unreadable': {
    cause: 'Eine JSON-Datei hier ist weder Einstellung noch Ergebnis dieses Programms.',
    remedy: 'Die .setup.json wählen, die zum Film gehört.',
    secondTime: 'Die Angaben neu im Formular eintragen, statt die Datei zu ändern.',
  },
  'sample-unreachable': {
    cause: 'Das eingebaute Beispiel ließ sich nicht laden.',
    remedy: 'Seite neu laden, dann noch einmal versuchen.',
    secondTime: 'Das Programm auf dem Rechner, der es bereitstellt, neu starten.',
  },
  'camera-missing': {
    cause: 'Es wurde keine Kamera gefunden.',
    remedy: 'Kamera anschließen oder einen aufgenommenen Film auswerten.',
    secondTime: 'Seite neu laden, nachdem die Kamera angeschlossen ist.',
  },
  'camera-refused': {
    cause: 'Der Browser durfte die Kamera nicht benutzen.',
    remedy: 'Kamera für diese Seite erlauben, dann noch einmal beginnen.',
    secondTime:
      'Die Einstellungen der Seite neben der Adresse öffnen, Kamera auf „Zulassen“ stellen, neu laden.',
  },
  'camera-busy': {
    cause: 'Die Kamera ist belegt oder startet nicht.',
    remedy: 'Andere Programme mit Kamera schließen, dann noch einmal beginnen.',
    secondTime: 'Kamera ab- und wieder anstecken oder das Tablet neu starten.',
  },
  'camera-insecure': {
    cause: 'Der Browser gibt die Kamera nur an eine sichere Seite.',
    remedy: 'Die Seite auf dem Rechner selbst (localhost) oder über HTTPS öffnen.',
    secondTime: 'Mit dem Kameraprogramm des Geräts aufnehmen und die Datei auswerten.',
  },
  'camera-unplugged': {
    cause: 'Die Kamera verschwand während der Drehung. Was bis dahin aufgenommen war, ist gelesen.',
    remedy: 'Kamera wieder anstecken, noch einmal messen.',
    secondTime: 'Kabel oder Buchse der Kamera wechseln, noch einmal messen.',
  },
  'camera-silent': {
    cause: 'Die Kamera gab einige Sekunden kein Bild. Was bis dahin aufgenommen war, ist gelesen.',
    remedy: 'Diese Seite vorn und das Tablet wach halten, noch einmal messen.',
    secondTime: 'Andere Programme schließen, Kamera ab- und anstecken, noch einmal messen.',
  },
  'picture-changed': {
    cause:
      'Das Bild änderte während der Drehung seine Größe. Was bis dahin aufgenommen war, ist gelesen.',
    remedy:
      'Tablet nicht drehen und Linse nicht wechseln, solange das Rad dreht, noch einmal messen.',
    secondTime: 'Die Bildschirmdrehung des Tablets sperren, noch einmal messen.',
  },
  'lens-changed': {
    cause:
      'Die Kamera wechselte während der Drehung Linse oder Zoom. Was bis dahin aufgenommen war, ist gelesen.',
    remedy: 'Linse und Zoom vorher einstellen und so lassen, noch einmal messen.',
    secondTime: 'Die Kamera mit Namen wählen, statt dem Tablet die Wahl zu lassen.',
  },
  'camera-frozen': {
    cause: 'Die Kamera gab immer wieder dasselbe Bild.',
    remedy: 'Die Kamera neu starten.',
    secondTime: 'Andere Programme mit Kamera schließen oder das Tablet neu starten.',
  },
  'sight-changed': {
    cause: 'Die Kamera sieht anders als zuvor: das Bild änderte Größe, Linse oder Zoom.',
    remedy: 'Linie und Kante werden neu gesucht; die Kamera jetzt so lassen.',
    secondTime: 'Bildschirmdrehung sperren und die Kamera mit Namen wählen.',
  },
  'page-was-hidden': {
    cause: 'Die Seite war eine Weile nicht zu sehen; in dieser Zeit kamen keine Bilder.',
    remedy: 'Von da weiterdrehen, wo das Rad steht; wurde es inzwischen bewegt, neu beginnen.',
    secondTime: 'Diese Seite vorn halten, bis die Drehung vollständig ist.',
  },
  'sweep-taken-up': {
    cause: 'Diese Umdrehung brach ab. Gelesen wurde, was bis dahin gemessen und aufgenommen war.',
    remedy: 'War es eine ganze Drehung, so zählt sie wie jede andere; sonst noch einmal messen.',
    secondTime: 'Diese Seite offen und vorn lassen, bis das Ergebnis da ist.',
  },
  'worker-restarted': {
    cause: 'Der messende Teil blieb stehen und wurde neu gestartet; die Messung beginnt von vorn.',
    remedy:
      'Ein Film wird von selbst neu gelesen; vor der Kamera ab jetzt eine volle Drehung weiterdrehen.',
    secondTime: 'Andere Programme schließen, Seite neu laden, noch einmal messen.',
  },
  'worker-failed': {
    cause: 'Der messende Teil blieb bei dieser Messung zweimal stehen.',
    remedy: 'Seite neu laden, dann noch einmal auswerten.',
    secondTime: 'Film und Angaben aufheben: sie zeigen, was dieses Programm nicht lesen kann.',
  },
  ...storageNotices,
};
