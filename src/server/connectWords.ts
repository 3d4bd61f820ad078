/** What the page says that leads a tablet to this machine. Step texts are plain text. */
export interface ConnectWords {
  readonly language: 'en' | 'de';
  readonly otherLanguage: string;
  readonly title: string;
  readonly lead: string;
  readonly codeLabel: string;
  readonly orType: string;
  readonly steps: readonly [ConnectStep, ConnectStep, ConnectStep];
  readonly saveCertificate: string;
  readonly openApp: string;
  readonly compareTitle: string;
  readonly compare: string;
  readonly whatTitle: string;
  readonly what: readonly string[];
  readonly noNetworkTitle: string;
  readonly noNetwork: string;
}

export interface ConnectStep {
  readonly title: string;
  readonly drawing: string;
  readonly lines: readonly string[];
}

const en: ConnectWords = {
  language: 'en',
  otherLanguage: 'Deutsch',
  title: 'Open Tiltsweep on a tablet',
  lead: 'Tablet and this computer must be in the same network. A camera works only over a connection that the tablet trusts; three steps make it so, once for each tablet.',
  codeLabel: 'Code to scan with the tablet’s camera',
  orType: 'or type',
  steps: [
    {
      title: 'Scan, and go on past the warning',
      drawing: 'A tablet in front of the code, with a warning on its screen',
      lines: [
        'Scan the code with the tablet’s camera and open the link.',
        'The browser warns: it does not know this computer yet. Choose “Advanced” or “Show details”, then go on to the address.',
      ],
    },
    {
      title: 'Save the certificate and trust it',
      drawing: 'A sealed sheet moves into the tablet, and a switch is on',
      lines: [
        'On the tablet, touch “Save certificate”.',
        'Android: in Settings search for “CA certificate”, choose “Install anyway”, and pick the saved file.',
        'iPad: in Settings open “Profile Downloaded” and install it; then General, About, Certificate Trust Settings: switch on Tiltsweep.',
      ],
    },
    {
      title: 'Open the app',
      drawing: 'A tablet that shows the wheel on its ball and the level line',
      lines: [
        'Touch “Open Tiltsweep”. No warning must come now; if one does, close the browser and open it again.',
        'Put it on the home screen: from then on it works without any network.',
      ],
    },
  ],
  saveCertificate: 'Save certificate',
  openApp: 'Open Tiltsweep',
  compareTitle: 'Compare before you trust',
  compare:
    'The tablet shows the certificate’s SHA-256 fingerprint before or after installing. It must be the one that this computer prints in its terminal:',
  whatTitle: 'What you trust',
  what: [
    'The certificate was made on this computer and is on no other. Its key never leaves this computer and is not part of the program’s files.',
    'Whoever has that key could make certificates that this tablet trusts. So trust it on tablets of the shed only, and remove it in the same place in Settings when you no longer need it.',
    'If this computer gets another address in the network, the trust still holds. But the tablet takes another address for another app: export the logbook first.',
  ],
  noNetworkTitle: 'This computer is not served in a network',
  noNetwork:
    'Tiltsweep was started for this computer alone, or no local network was found. Connect to the network and start it again without --no-lan.',
};

const de: ConnectWords = {
  language: 'de',
  otherLanguage: 'English',
  title: 'Tiltsweep auf einem Tablet öffnen',
  lead: 'Tablet und dieser Rechner müssen im selben Netz sein. Eine Kamera geht nur über eine Verbindung, der das Tablet vertraut; dafür braucht es drei Schritte, einmal für jedes Tablet.',
  codeLabel: 'Code für die Kamera des Tablets',
  orType: 'oder eintippen',
  steps: [
    {
      title: 'Einlesen und an der Warnung vorbei',
      drawing: 'Ein Tablet vor dem Code, auf seinem Bildschirm eine Warnung',
      lines: [
        'Den Code mit der Kamera des Tablets einlesen und den Link öffnen.',
        'Der Browser warnt: Er kennt diesen Rechner noch nicht. „Erweitert“ oder „Details einblenden“ wählen, dann weiter zur Adresse.',
      ],
    },
    {
      title: 'Zertifikat sichern und ihm vertrauen',
      drawing: 'Ein Blatt mit Siegel kommt ins Tablet, und ein Schalter ist an',
      lines: [
        'Auf dem Tablet „Zertifikat sichern“ antippen.',
        'Android: in den Einstellungen nach „CA-Zertifikat“ suchen, „Trotzdem installieren“ wählen und die gesicherte Datei nehmen.',
        'iPad: in den Einstellungen „Profil geladen“ öffnen und installieren; dann Allgemein, Info, Zertifikatsvertrauenseinstellungen: Tiltsweep einschalten.',
      ],
    },
    {
      title: 'Die App öffnen',
      drawing: 'Ein Tablet, das das Rad auf seiner Kugel und die waagrechte Linie zeigt',
      lines: [
        '„Tiltsweep öffnen“ antippen. Jetzt darf keine Warnung mehr kommen; sonst den Browser schließen und neu öffnen.',
        'Auf den Startbildschirm legen: Von da an geht es ganz ohne Netz.',
      ],
    },
  ],
  saveCertificate: 'Zertifikat sichern',
  openApp: 'Tiltsweep öffnen',
  compareTitle: 'Vergleichen, dann vertrauen',
  compare:
    'Das Tablet zeigt vor oder nach dem Installieren den SHA-256-Fingerabdruck des Zertifikats. Es muss der sein, den dieser Rechner in seinem Terminal ausgibt:',
  whatTitle: 'Wem man da vertraut',
  what: [
    'Das Zertifikat wurde auf diesem Rechner gemacht und ist auf keinem anderen. Sein Schlüssel verlässt ihn nie und gehört nicht zu den Dateien des Programms.',
    'Wer diesen Schlüssel hat, könnte Zertifikate machen, denen das Tablet vertraut. Darum nur auf Tablets der Werkstatt vertrauen, und es an derselben Stelle der Einstellungen entfernen, wenn es nicht mehr gebraucht wird.',
    'Bekommt dieser Rechner im Netz eine andere Adresse, gilt das Vertrauen weiter. Das Tablet hält eine andere Adresse aber für eine andere App: vorher das Logbuch exportieren.',
  ],
  noNetworkTitle: 'Dieser Rechner ist in keinem Netz erreichbar',
  noNetwork:
    'Tiltsweep wurde nur für diesen Rechner gestartet, oder es war kein lokales Netz da. Mit dem Netz verbinden und ohne --no-lan neu starten.',
};

export const CONNECT_WORDS = { en, de } as const;

/** The language of the two that a browser asks for first (`Accept-Language`); English otherwise. */
export function connectLanguage(header: string | undefined): 'en' | 'de' {
  const wanted = (header ?? '')
    .split(',')
    .map((part, place) => {
      const [tag = '', weight = 'q=1'] = part
        .trim()
        .toLowerCase()
        .split(/\s*;\s*/);
      return { tag: tag.slice(0, 2), weight: Number(weight.replace('q=', '')) || 0, place };
    })
    .filter(({ tag, weight }) => (tag === 'de' || tag === 'en') && weight > 0)
    .sort((a, b) => b.weight - a.weight || a.place - b.place);
  return wanted[0]?.tag === 'de' ? 'de' : 'en';
}
