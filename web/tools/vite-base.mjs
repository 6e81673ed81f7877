// What both forms of the page, and the unit tests, have in common.
import { engineBinary, engineLoader, VERSION, WEB } from './settings.mjs';

/**
 * The loader that the WebAssembly compiler wrote looks for the engine beside itself. The page hands
 * the compiled engine in (src/engine/module.ts), so that address is never used; left in, it would
 * stop the one-file form, which has no address to look beside.
 */
export function engineInHand() {
  return {
    name: 'offplumb-engine-in-hand',
    enforce: 'pre',
    transform(code, id) {
      if (id.split('?')[0] !== engineLoader) return null;
      return {
        code: code
          .replace(/new URL\((["'])offplumb\.wasm\1,\s*import\.meta\.url\)\.(?:toString\(\)|href)/g,
            '"offplumb.wasm"')
          .replace(/import\.meta\.url/g, '""'),
        map: null,
      };
    },
  };
}

export function engineAliases() {
  return [
    { find: /^offplumb-engine$/, replacement: engineLoader },
    { find: /^offplumb-engine-wasm(?=\?|$)/, replacement: engineBinary },
  ];
}

/** @param {{ oneFile: boolean }} form */
export function viteBase({ oneFile }) {
  return {
    root: WEB,
    base: './',
    configFile: false,
    envFile: false,
    logLevel: 'warn',
    clearScreen: false,
    define: { ONE_FILE: JSON.stringify(oneFile), VERSION: JSON.stringify(VERSION) },
    resolve: { alias: engineAliases() },
    esbuild: { jsx: 'automatic', jsxImportSource: 'preact', legalComments: 'none' },
    css: { devSourcemap: false },
    build: {
      target: ['es2020', 'chrome91', 'firefox114', 'safari15'],
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
      sourcemap: false,
    },
  };
}
