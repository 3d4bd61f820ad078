import type { EnginePage } from './enginePage.ts';

/** A screen of the logbook is there within a second; on a busy machine later. */
const LIMIT_MS = 20_000;
const NOTE = 'the rim is bent by the valve';

/**
 * Reads the logbook after the page was loaded anew, writes into it, and reads that after another
 * time. `readingPlace` is where the reading was shown; throws with what was not there.
 */
export async function tryLogbook(
  page: EnginePage,
  url: string,
  readingPlace: string,
): Promise<void> {
  const wheelId = /^#\/wheel\/([^/]+)\//.exec(readingPlace)?.[1] ?? '';
  const openWheel = async () => {
    // Only another document than the one that is open is loaded anew.
    await page.goTo('about:blank');
    await page.goTo(`${url}#/logbook/${wheelId}`);
  };
  await openWheel();
  await page.run(`
    ${HELPERS}
    await until(() => entries().length === 1, 'the reading after a reload');
    const text = document.querySelector('textarea');
    Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')
      .set.call(text, ${JSON.stringify(NOTE)});
    text.dispatchEvent(new Event('input', { bubbles: true }));
    await until(() => find('add-note') && !find('add-note').disabled, 'a note can be added');
    find('add-note').click();
    await until(() => entries().length === 2, 'the note');
  `);
  await openWheel();
  await page.run(`
    ${HELPERS}
    await until(() => entries().length === 2, 'reading and note after a reload');
    const notes = entries().filter((one) => one.innerText.includes(${JSON.stringify(NOTE)}));
    if (notes.length !== 1) throw new Error('the note has lost its text');
    if (find('storage-notice')) throw new Error(find('storage-notice').innerText);
  `);
}

/** For the page. */
const HELPERS = `
  const find = (role) => document.querySelector('[data-role="' + role + '"]');
  const entries = () => [...document.querySelectorAll('[data-role="timeline"] > li')];
  const until = async (isSo, what) => {
    const beforeMs = performance.now();
    while (!isSo()) {
      if (performance.now() - beforeMs > ${LIMIT_MS}) throw new Error('not there: ' + what);
      await new Promise((on) => setTimeout(on, 50));
    }
  };
`;
