// What the page may load and run: nothing but its own. Written into the page itself, because not
// every host of plain files lets one set headers. (`frame-ancestors` works as a header only.)
import { createHash } from 'node:crypto';

function written(rules) {
  return Object.entries(rules).map(([name, sources]) => `${name} ${sources.join(' ')}`).join('; ');
}

/** Of the folder of files. WebAssembly may be compiled; text may not be run. */
export const folderPolicy = written({
  'default-src': ["'none'"],
  'script-src': ["'self'", "'wasm-unsafe-eval'"],
  'style-src': ["'self'"],
  'img-src': ["'self'", 'data:', 'blob:'],
  'connect-src': ["'self'"],
  'worker-src': ["'self'"],
  'manifest-src': ["'self'"],
  'base-uri': ["'none'"],
  'form-action': ["'none'"],
});

function hashed(text) {
  return `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`;
}

/** Of the one file, whose script and style are within it and named by their hashes. */
export function singlePolicy({ script, style }) {
  return written({
    'default-src': ["'none'"],
    'script-src': [hashed(script), "'wasm-unsafe-eval'", 'blob:'],
    'style-src': [hashed(style)],
    'worker-src': ['blob:'],
    'img-src': ['data:', 'blob:'],
    'base-uri': ["'none'"],
    'form-action': ["'none'"],
  });
}

export function policyMeta(policy) {
  return `<meta http-equiv="Content-Security-Policy" content="${policy}">`;
}
