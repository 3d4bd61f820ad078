import type { Plugin } from 'vite';

import { pagePolicy } from '../server/securityHeaders.ts';

/**
 * Writes the content security policy into the built page, so that it also holds where another
 * server sends the folder without our headers. The development server needs inline scripts.
 */
export function pagePolicyMeta(): Plugin {
  return {
    name: 'tiltsweep-page-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: pagePolicy() },
        // Before anything that it is to hold for.
        injectTo: 'head-prepend',
      },
    ],
  };
}
