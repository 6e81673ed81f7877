// Writes sw.js: which files the page consists of, each with the hash of its contents, and a version
// made of them all.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const TEMPLATE = new URL('./sw-template.js', import.meta.url);

function filesIn(folder, within = '') {
  return readdirSync(join(folder, within)).sort().flatMap((name) => {
    const path = within ? `${within}/${name}` : name;
    return statSync(join(folder, path)).isDirectory() ? filesIn(folder, path) : [path];
  });
}

function sha256(bytes) {
  return createHash('sha256').update(bytes);
}

/** The start page is kept under the folder's own address: some hosts send "index.html" there. */
function addressOf(path) {
  return path === 'index.html' ? './' : `./${path}`;
}

/** Fills the placeholder `name` of the template, which must be there once. */
function filled(template, name, value) {
  const parts = template.split(name);
  if (parts.length !== 2) throw new Error(`sw-template.js must hold ${name} once`);
  return parts.join(value);
}

/** @returns {{ version: string, files: string[][] }} */
export function writeServiceWorker(folder) {
  const template = readFileSync(TEMPLATE, 'utf8');
  const files = filesIn(folder).filter((path) => path !== 'sw.js').map((path) => [
    addressOf(path), `sha256-${sha256(readFileSync(join(folder, path))).digest('base64')}`]);
  const version = sha256(template + JSON.stringify(files)).digest('hex').slice(0, 16);
  const list = `[\n${files.map((file) => `  ${JSON.stringify(file)},\n`).join('')}]`;
  const text = filled(filled(template, '__VERSION__', JSON.stringify(version)), '__FILES__', list);
  writeFileSync(join(folder, 'sw.js'), text);
  return { version, files };
}
