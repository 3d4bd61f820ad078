import type { StorageTroubleCode } from '../../../contract/storageTroubles.ts';
import type { Words } from '../en/index.ts';

/** Was über den Speicher zu sagen ist. */
export const storageNotices: Pick<Words['notices'], StorageTroubleCode> = {
  'storage-full': {
    cause:
      'Der Speicher dieses Browsers ist voll. Die letzten Einträge leben nur in dieser offenen Seite.',
    remedy:
      'Filme im Logbuch löschen oder das Logbuch als Datei sichern, dann noch einmal versuchen.',
    secondTime:
      'Das Logbuch jetzt als Datei sichern, bevor die Seite geschlossen wird, und Platz schaffen.',
  },
  'storage-blocked': {
    cause:
      'Dieser Browser behält nichts für diese Seite. Einträge leben nur, bis sie geschlossen wird.',
    remedy:
      'Privates Fenster verlassen oder der Seite das Speichern erlauben, noch einmal versuchen.',
    secondTime: 'Das Logbuch als Datei sichern, bevor diese Seite geschlossen wird.',
  },
  'storage-failed': {
    cause:
      'Der Browser konnte die letzten Einträge nicht speichern. Sie leben nur in dieser offenen Seite.',
    remedy: 'Noch einmal versuchen. Bleibt es so, andere Fenster dieses Programms schließen.',
    secondTime: 'Das Logbuch als Datei sichern, bevor die Seite zugeht, dann Browser neu starten.',
  },
  'storage-newer': {
    cause:
      'Eine neuere Fassung dieses Programms hat das Logbuch in einem anderen Fenster geöffnet.',
    remedy: 'Diese Seite neu laden.',
    secondTime: 'Alle Fenster dieses Programms schließen, dann eines öffnen.',
  },
  'storage-wiped': {
    cause: 'Der Speicher dieses Browsers wurde geleert: das Logbuch, das hier war, ist weg.',
    remedy: 'Es aus der zuletzt gesicherten Datei zurückholen.',
    secondTime:
      'Das Programm auf dem Startbildschirm einrichten: dann leert der Browser es nicht von selbst.',
  },
  'storage-large': {
    cause: 'Die Filme brauchen fast so viel Platz, wie eine gesicherte Datei fasst (4 GB).',
    remedy: 'Das Logbuch jetzt mit seinen Filmen in eine Datei sichern, dann hier Filme löschen.',
    secondTime: 'Filme von Rädern löschen, die geprüft sind; die Messungen bleiben.',
  },
  'storage-low': {
    cause: 'Der Speicher dieses Browsers ist fast voll.',
    remedy: 'Nicht mehr gebrauchte Filme löschen oder das Logbuch mit Filmen als Datei sichern.',
    secondTime: 'Platz auf dem Tablet schaffen: der Browser bekommt einen Teil des freien.',
  },
  'film-not-kept': {
    cause: 'Dieser Browser kann den Film nicht aufnehmen. Das Ergebnis bleibt, der Film nicht.',
    remedy: 'Es ist nichts zu tun: gemessen wird wie immer.',
    secondTime: 'Einen anderen Browser nehmen, wenn Filme wichtig sind.',
  },
};
