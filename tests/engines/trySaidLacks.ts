import type { EnginePage } from './enginePage.ts';

/**
 * What this engine lacks stands on the settings' screen, and nothing that it has; resolves with the
 * names of it. Throws with what is said otherwise.
 */
export async function trySaidLacks(page: EnginePage, url: string): Promise<readonly string[]> {
  await page.goTo('about:blank');
  await page.goTo(`${url}#/settings`);
  const { lacks, said, isShown } = await page.run<{
    lacks: string[];
    said: string[];
    isShown: boolean;
  }>(`
    const beforeMs = performance.now();
    while (!document.querySelector('.settings') && performance.now() - beforeMs < 20000) {
      await new Promise((on) => setTimeout(on, 50));
    }
    const has = {
      decoder: typeof VideoDecoder === 'function',
      encoder: typeof VideoEncoder === 'function',
      wakeLock: navigator.wakeLock !== undefined,
    };
    const lines = [...document.querySelectorAll('[data-role="browser-lacks"] [data-part]')];
    return {
      isShown: document.querySelector('.settings') !== null,
      lacks: Object.keys(has).filter((part) => !has[part]),
      said: lines.filter((line) => line.innerText.length > 20).map((line) => line.dataset.part),
    };
  `);
  if (!isShown) throw new Error('the settings did not open');
  if (said.join() !== lacks.join()) throw new Error(`lacks ${lacks.join()}, says ${said.join()}`);
  return lacks;
}
