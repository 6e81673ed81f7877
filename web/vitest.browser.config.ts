// The tests in a real browser, against the page as it is built and served. Two files at a time:
// each test starts a browser of its own and waits for much of its time.
import { defineConfig } from 'vitest/config';
import { PAGE_OUT, SINGLE_OUT, WEB } from './tools/settings.mjs';

export default defineConfig({
  root: WEB,
  test: {
    include: ['tests/browser/**/*.test.ts'],
    environment: 'node',
    provide: { pageFolder: PAGE_OUT, singleFile: SINGLE_OUT },
    pool: 'forks',
    poolOptions: { forks: { minForks: 1, maxForks: 2 } },
    sequence: { concurrent: false },
    testTimeout: 240_000,
    hookTimeout: 120_000,
    teardownTimeout: 30_000,
  },
});
