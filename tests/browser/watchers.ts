import type { BrowserContext } from '@playwright/test';

/** What a page did that it must never do, in the order in which it was seen. */
export interface Offences {
  readonly list: readonly string[];
}

declare global {
  interface Window {
    tellOffence(offence: string): void;
  }
}

/**
 * Watches every page and worker of a context, from before its first page is opened: requests to
 * another origin than `origin`, refusals of the content security policy, errors on the console and
 * errors that nobody caught.
 */
export async function watchOffences(context: BrowserContext, origin: string): Promise<Offences> {
  const list: string[] = [];
  context.on('request', (request) => {
    const url = new URL(request.url());
    const own = url.origin === origin || url.protocol === 'data:' || url.protocol === 'blob:';
    if (!own) list.push(`request: ${request.url()}`);
  });
  context.on('console', (message) => {
    if (message.type() === 'error') list.push(`console: ${message.text()}`);
  });
  context.on('weberror', (error) => list.push(`uncaught: ${error.error().message}`));
  await context.exposeFunction('tellOffence', (offence: string) => list.push(offence));
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      window.tellOffence(
        `policy: ${event.effectiveDirective} refused ${event.blockedURI} in ${event.sourceFile}`,
      );
    });
  });
  return { list };
}
