import type { PluginOption } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** A sample film has some 2.3 MB; what is larger than this is not meant to be kept on every tablet. */
const LARGEST_KEPT_BYTES = 16 * 1024 * 1024;

/** Ground of the light screen (`look/tokens.css`): behind the app while it opens. */
const GROUND = '#f4efe3';

/**
 * What makes the app installable and independent of a network: a manifest, and a service worker
 * that keeps every built file, sample films too. A new version is fetched whole and then waits; the
 * app says when it may take over (`session/appUpdate.ts`).
 */
export function offlineApp(): PluginOption {
  return VitePWA({
    registerType: 'prompt',
    // Registered by the app itself, when its first screen stands.
    injectRegister: false,
    manifest: {
      id: './',
      name: 'Tiltsweep',
      short_name: 'Tiltsweep',
      description: 'Finds where a car wheel on a ball is heavy, from one hand-turned revolution.',
      start_url: './',
      scope: './',
      display: 'standalone',
      background_color: GROUND,
      theme_color: GROUND,
      categories: ['utilities'],
      icons: [
        { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
        { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
        { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
        {
          src: 'icon-maskable-512.png',
          sizes: '512x512',
          type: 'image/png',
          purpose: 'maskable',
        },
      ],
    },
    workbox: {
      globPatterns: ['**/*.{html,js,css,svg,png,mp4,webm,wasm,json}'],
      maximumFileSizeToCacheInBytes: LARGEST_KEPT_BYTES,
      // Takes charge of the very first visit, so that it can go on without a network at once.
      clientsClaim: true,
      skipWaiting: false,
      cleanupOutdatedCaches: true,
      // One page, addresses behind `#`: nothing to fall back to, and the server's own pages
      // (connect.html) come from the server.
      navigateFallback: null,
      inlineWorkboxRuntime: true,
      sourcemap: false,
    },
  });
}
