import { defineConfig } from 'vitest/config';

// Tests of the pure floors need no database, so that they run in the blink of an eye while one works on them.
const pure = ['tests/shared/**/*.test.ts', 'tests/core/**/*.test.ts'];

export default defineConfig({
  test: {
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    projects: [
      { extends: true, test: { name: 'pure', include: pure } },
      {
        extends: true,
        test: { name: 'server', include: ['tests/**/*.test.ts'], exclude: pure, globalSetup: 'tests/support/global-setup.ts' },
      },
    ],
  },
});
