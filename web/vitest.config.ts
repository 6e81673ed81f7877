// The unit tests: in Node.js, with the real engine where a test asks for it (tests/engine.ts).
import { defineConfig } from 'vitest/config';
import { ENGINE_FOLDER } from './tools/settings.mjs';
import { viteBase } from './tools/vite-base.mjs';

const base = viteBase({ oneFile: false });

export default defineConfig({
  root: base.root,
  define: base.define,
  resolve: base.resolve,
  esbuild: base.esbuild,
  test: {
    include: ['tests/unit/**/*.test.{ts,tsx}'],
    environment: 'node',
    provide: { engineFolder: ENGINE_FOLDER },
    // An unhandled fault is a fault of a test, whichever it is of.
    dangerouslyIgnoreUnhandledErrors: false,
  },
});
