// The page as a folder of files: index.html, hashed files under assets/, the engine and its worker
// as files of their own, each screen loaded when it is first opened.
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { partsOf } from './parts.mjs';
import { folderPolicy, policyMeta } from './policies.mjs';
import { writeServiceWorker } from './service-worker.mjs';
import { PAGE_OUT, PARTS_OUT, Refusal, WEB } from './settings.mjs';
import { engineInHand, viteBase } from './vite-base.mjs';

/** The folder is emptied before it is filled: only ever one that holds a page, or nothing. */
function refuseForeignFolder() {
  if (!existsSync(PAGE_OUT)) return;
  const names = readdirSync(PAGE_OUT);
  const ours = ['index.html', 'manifest.webmanifest', 'assets'].some((name) => names.includes(name));
  if (names.length > 0 && !ours) {
    throw new Refusal(
      `${PAGE_OUT} holds something else than a page and would be emptied. Set OFFPLUMB_PAGE_OUT to ` +
      'another folder.');
  }
}

function policyPlugin() {
  return {
    name: 'offplumb-policy',
    transformIndexHtml: {
      order: 'post',
      handler: (html) => html.replace('<meta charset="utf-8">',
        `<meta charset="utf-8">\n  ${policyMeta(folderPolicy)}`),
    },
  };
}

/** Notes what each file is for; the budgets are read from it. */
function partsPlugin() {
  return {
    name: 'offplumb-parts',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        writeFileSync(PARTS_OUT, `${JSON.stringify(partsOf(bundle), null, 2)}\n`);
      },
    },
  };
}

const names = {
  entryFileNames: 'assets/page-[hash].js',
  chunkFileNames: 'assets/[name]-[hash].js',
  assetFileNames: 'assets/[name]-[hash][extname]',
};

function foldersConfig() {
  const base = viteBase({ oneFile: false });
  return {
    ...base,
    plugins: [engineInHand(), policyPlugin(), partsPlugin()],
    worker: {
      format: 'es',
      plugins: () => [engineInHand()],
      rollupOptions: {
        output: { ...names, entryFileNames: 'assets/worker-[hash].js' },
      },
    },
    build: {
      ...base.build,
      outDir: PAGE_OUT,
      emptyOutDir: true,
      assetsDir: 'assets',
      // The policy of the page lets it fetch files, not data: addresses.
      assetsInlineLimit: 0,
      rollupOptions: { input: resolve(WEB, 'index.html'), output: names },
    },
  };
}

export async function buildFolder() {
  refuseForeignFolder();
  await build(foldersConfig());
  const { version, files } = writeServiceWorker(PAGE_OUT);
  return { index: join(PAGE_OUT, 'index.html'), version, files: files.length };
}
