import { stepDrawing } from './connectDrawings.ts';
import { CONNECT_WORDS, type ConnectStep, type ConnectWords } from './connectWords.ts';
import { qrForPage } from './qrPictures.ts';

/** Where a tablet finds this machine, and what it must trust. */
export interface LanPlace {
  /** Base address with its port and `/` at the end. */
  readonly url: string;
  readonly fingerprint: string;
}

export const CONNECT_ADDRESS = '/connect.html';
export const CONNECT_STYLE_ADDRESS = '/connect.css';
export const AUTHORITY_ADDRESS = '/tiltsweep-authority.crt';

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};
const text = (plain: string) => plain.replace(/[&<>"]/g, (sign) => escapes[sign]!);

/** The page that leads a tablet here, in one language; without a network it says so. */
export function connectPage(language: 'en' | 'de', place: LanPlace | null): string {
  const words = CONNECT_WORDS[language];
  const other = language === 'en' ? 'de' : 'en';
  const title = place ? words.title : words.noNetworkTitle;
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(title)}</title>
<link rel="stylesheet" href="connect.css">
<link rel="icon" href="data:,">
</head>
<body>
<header>
<h1>${text(title)}</h1>
<a class="touch plain" lang="${other}" href="connect.${other}.html">${text(words.otherLanguage)}</a>
</header>
<main>
${place ? steps(words, place) : `<p>${text(words.noNetwork)}</p>`}
</main>
</body>
</html>
`;
}

function steps(words: ConnectWords, place: LanPlace): string {
  const address = `${place.url}connect.html`;
  const [scan, trust, open] = words.steps;
  return `<p>${text(words.lead)}</p>
<div class="scan">
${qrForPage(address, text(words.codeLabel))}
<p>${text(words.orType)}<br><span class="address">${text(address)}</span></p>
</div>
<ol>
${step(0, scan, '')}
${step(1, trust, `<a class="touch" href="tiltsweep-authority.crt" download>${text(words.saveCertificate)}</a>`)}
${step(2, open, `<a class="touch" href="./">${text(words.openApp)}</a>`)}
</ol>
<section>
<h2>${text(words.compareTitle)}</h2>
<p>${text(words.compare)}</p>
<code>${text(place.fingerprint).replaceAll(':', ':<wbr>')}</code>
</section>
<section>
<h2>${text(words.whatTitle)}</h2>
${words.what.map((line) => `<p>${text(line)}</p>`).join('\n')}
</section>`;
}

function step(number: 0 | 1 | 2, { title, drawing, lines }: ConnectStep, action: string): string {
  return `<li>
<h2>${text(title)}</h2>
${stepDrawing(number, text(drawing))}
${lines.map((line) => `<p>${text(line)}</p>`).join('\n')}
${action}
</li>`;
}
