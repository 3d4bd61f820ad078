import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

import { licenceList } from './src/build/licenceList.ts';
import { offlineApp } from './src/build/offlineApp.ts';
import { pagePolicyMeta } from './src/build/pagePolicyMeta.ts';

const licences = licenceList();

export default defineConfig({
  plugins: [react(), pagePolicyMeta(), licences.forPage, offlineApp()],
  // Relative addresses: the built folder works wherever it is served from.
  base: './',
  // Copied as they are: what an installed app shows of itself.
  publicDir: 'src/install',
  worker: { format: 'es', plugins: licences.forWorkers },
  build: {
    target: 'es2023',
    // Films are files of their own, never text inside a script.
    assetsInlineLimit: 0,
  },
  server: { port: 5173 },
});
