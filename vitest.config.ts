import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'packages/*/src/**/*.test.ts',
      'apps/*/src/**/*.test.ts',
      'tests/**/*.test.ts',
      'sample-geo/**/*.test.ts',
    ],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
