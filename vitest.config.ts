import { defineConfig } from 'vitest/config';

/** One project a kind of test, so that each can be run and counted by itself. */
const project = (name: string, testTimeoutMs: number) => ({
  test: {
    name,
    include: [`tests/${name}/**/*.test.ts`],
    benchmark: { include: [] },
    environment: 'node' as const,
    setupFiles: ['tests/setup/seededProperties.ts'],
    testTimeout: testTimeoutMs,
    hookTimeout: testTimeoutMs,
  },
});

export default defineConfig({
  test: {
    projects: [
      project('unit', 20_000),
      project('outside', 30_000),
      // Reads every import of the project, on a machine that may be busy.
      project('architecture', 60_000),
      // Draws or decodes whole sweeps.
      project('pipeline', 180_000),
      {
        test: { name: 'bench', include: [], benchmark: { include: ['tests/bench/**/*.bench.ts'] } },
      },
    ],
  },
});
