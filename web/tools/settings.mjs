// Where things are: taken from the environment, else the usual places of the repository.
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder web/. */
export const WEB = fileURLToPath(new URL('..', import.meta.url));

function place(variable, usual) {
  const given = process.env[variable];
  return given ? resolve(given) : resolve(WEB, usual);
}

/** The compiled engine: offplumb.mjs (its loader) and offplumb.wasm. */
export const ENGINE_FOLDER = place('OFFPLUMB_ENGINE_FOLDER', '../build/wasm/apps/wasm');
/** The page as a folder of files, for a web server. */
export const PAGE_OUT = place('OFFPLUMB_PAGE_OUT', '../build/page');
/** The page as one file, to be handed on. */
export const SINGLE_OUT = place('OFFPLUMB_SINGLE_OUT', '../build/page-single/offplumb.html');
/** What the page's files are for; beside the folder and not in it, since it is not sent to anyone. */
export const PARTS_OUT = `${PAGE_OUT}.parts.json`;

export const VERSION = JSON.parse(readFileSync(resolve(WEB, 'package.json'), 'utf8')).version;

export const engineLoader = resolve(ENGINE_FOLDER, 'offplumb.mjs');
export const engineBinary = resolve(ENGINE_FOLDER, 'offplumb.wasm');

/** A fault that the person at the keyboard can mend: shown as words, without a stack. */
export class Refusal extends Error {}

export function needEngine() {
  for (const file of [engineLoader, engineBinary]) {
    if (!existsSync(file)) {
      throw new Refusal(
        `The engine is not there: ${file}. Build it first (scripts of the repository do), or set ` +
        'OFFPLUMB_ENGINE_FOLDER to the folder that holds offplumb.mjs and offplumb.wasm.');
    }
  }
}
