import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

import { pagePolicyMeta } from './src/build/pagePolicyMeta.ts';

export default defineConfig({
  plugins: [react(), pagePolicyMeta()],
  // Relative addresses: the built folder works wherever it is served from.
  base: './',
  worker: { format: 'es' },
  build: {
    target: 'es2023',
    // Films are files of their own, never text inside a script.
    assetsInlineLimit: 0,
  },
  server: { port: 5173 },
});
