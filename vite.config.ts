import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

import { offlineApp } from './src/build/offlineApp.ts';
import { pagePolicyMeta } from './src/build/pagePolicyMeta.ts';

export default defineConfig({
  plugins: [react(), pagePolicyMeta(), offlineApp()],
  // Relative addresses: the built folder works wherever it is served from.
  base: './',
  // Copied as they are: what an installed app shows of itself.
  publicDir: 'src/install',
  worker: { format: 'es' },
  build: {
    target: 'es2023',
    // Films are files of their own, never text inside a script.
    assetsInlineLimit: 0,
  },
  server: { port: 5173 },
});
