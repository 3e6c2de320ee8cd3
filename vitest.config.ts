import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'packages/*/src/**/*.test.ts',
      'apps/*/src/**/*.test.ts',
      'tests/**/*.test.ts',
      'sample-geo/**/*.test.ts',
    ],
    globalSetup: ['tests/temporary-home.ts', 'tests/journeys/served-sample.ts'],
    setupFiles: ['tests/seeded-cases.ts', 'tests/temporary-folders-removed.ts'],
    // One file more than there are cores: journeys wait for their browsers much of the time.
    maxWorkers: availableParallelism() + 1,
    // A page's figures come from its worker; on a busy machine that may take seconds.
    expect: { poll: { timeout: 20_000 } },
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
