// The page as one file that opens from a folder of the phone or the laptop: script, style, worker
// and engine are within it.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { build, transformWithEsbuild } from 'vite';
import { policyMeta, singlePolicy } from './policies.mjs';
import { engineBinary, SINGLE_OUT, WEB } from './settings.mjs';
import { engineInHand, viteBase } from './vite-base.mjs';

/**
 * Takes the branches of the other form out before the bundler follows them: it would bundle the
 * worker's file wherever it sees its address.
 */
function onlyThisForm() {
  return {
    name: 'offplumb-only-this-form',
    enforce: 'pre',
    async transform(code, id) {
      if (!/\.tsx?$/.test(id) || !/\bONE_FILE\b/.test(code)) return null;
      return transformWithEsbuild(code, id, {
        define: { ONE_FILE: 'true' },
        minifySyntax: true,
        jsx: 'preserve',
        sourcemap: false,
      });
    },
  };
}

/** The engine is within the file, so it has no address. */
function noEngineAddress() {
  const id = '\0offplumb-no-address';
  return {
    name: 'offplumb-no-engine-address',
    enforce: 'pre',
    resolveId: (source) => (source.startsWith('offplumb-engine-wasm') ? id : null),
    load: (loaded) => (loaded === id ? 'export default "";' : null),
  };
}

/** Builds one classic script with everything in it; gives it and its style. */
async function bundled(entry) {
  const base = viteBase({ oneFile: true });
  const { output } = await build({
    ...base,
    publicDir: false,
    resolve: { alias: base.resolve.alias.filter(({ find }) => !find.test('offplumb-engine-wasm')) },
    plugins: [noEngineAddress(), onlyThisForm(), engineInHand()],
    build: {
      ...base.build,
      write: false,
      cssCodeSplit: false,
      assetsInlineLimit: Number.MAX_SAFE_INTEGER,
      rollupOptions: {
        input: resolve(WEB, entry),
        output: { format: 'iife', inlineDynamicImports: true },
      },
    },
  });
  const scripts = output.filter((file) => file.type === 'chunk');
  const styles = output.filter((file) => file.fileName.endsWith('.css'));
  const others = output.filter((file) => !scripts.includes(file) && !styles.includes(file));
  if (scripts.length !== 1 || others.length > 0) {
    const names = output.map((file) => file.fileName).join(', ');
    throw new Error(`${entry} did not become one script: ${names}`);
  }
  return {
    script: scripts[0].code.trim(),
    style: styles.map((file) => file.source.toString().trim()).join('\n'),
  };
}

/** A script's text that cannot end the element it stands in, nor open a comment there. */
export function withinScript(text) {
  return text.replace(/<(?=\/script|!--)/gi, '<\\');
}

export function withinStyle(text) {
  return text.replace(/<\/(?=style)/gi, '<\\/');
}

/** Replaces what is found once in the page's frame; anything else is a change of it not seen to. */
function put(html, pattern, text) {
  const found = html.match(new RegExp(pattern, 'g')) ?? [];
  if (found.length !== 1) throw new Error(`index.html must hold ${pattern} once, not ${found.length} times`);
  return html.replace(pattern, () => text);
}

function iconInside() {
  const svg = readFileSync(resolve(WEB, 'public/icons/mark.svg'));
  return `<link rel="icon" type="image/svg+xml" href="data:image/svg+xml;base64,${svg.toString('base64')}">`;
}

function framed({ script, style, worker, engine }) {
  const meta = policyMeta(singlePolicy({ script, style }));
  let html = readFileSync(resolve(WEB, 'index.html'), 'utf8');
  html = put(html, /<meta charset="utf-8">/, `<meta charset="utf-8">\n  ${meta}`);
  html = put(html, / *<link rel="manifest"[^>]*>\n/, '');
  html = put(html, / *<link rel="apple-touch-icon"[^>]*>\n/, '');
  html = put(html, /<link rel="icon"[^>]*>/, iconInside());
  html = put(html, /<script type="module"[^>]*><\/script>/, `<style>${style}</style>`);
  return put(html, /<\/body>/, [
    `<script type="text/plain" id="worker">${worker}</script>`,
    `<script type="application/octet-stream" id="engine">${engine}</script>`,
    `<script>${script}</script>`,
    '</body>'].join('\n'));
}

/** What would not work in a file that stands alone. */
function refuseAddresses(name, code) {
  for (const trace of ['import.meta', 'offplumb.wasm?', 'worker.ts', 'sw.js']) {
    if (code.includes(trace)) {
      throw new Error(`the one-file form's ${name} still holds "${trace}"; put it in a branch of ONE_FILE`);
    }
  }
}

export async function buildSingle() {
  const page = await bundled('src/main.tsx');
  const worker = await bundled('src/engine/worker.ts');
  refuseAddresses('page', page.script);
  refuseAddresses('worker', worker.script);
  const html = framed({
    script: withinScript(page.script),
    style: withinStyle(page.style),
    worker: withinScript(worker.script),
    engine: readFileSync(engineBinary).toString('base64'),
  });
  mkdirSync(dirname(SINGLE_OUT), { recursive: true });
  writeFileSync(SINGLE_OUT, html);
  return { bytes: Buffer.byteLength(html) };
}
