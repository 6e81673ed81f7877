// The form has a field for every key of the manual.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const manual = readFileSync(new URL('../../../../../docs/rig-file.md', import.meta.url), 'utf8');
const folder = new URL('../../../../src/screens/rigs/', import.meta.url);
const sources = readdirSync(folder).filter((name) => name.endsWith('.tsx'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8')).join('\n');

/** The first column of the tables whose heading is "key". */
function keysOf(text: string): string[] {
  const tables = text.split(/^\| key \|.*\n\|[-|]+\n/m).slice(1).map((table) => table.split(/\n(?!\|)/)[0] ?? '');
  return tables.flatMap((table) => table.split('\n').flatMap((row) =>
    [...(/^\|([^|]*)\|/.exec(row)?.[1] ?? '').matchAll(/`(\w+)`/g)].map((match) => match[1] ?? '')));
}

/** Said by other means than a field: a rig is made one's own, or its text is changed. */
const ELSEWHERE = ['invented'];

test('every key of the manual has its field', () => {
  const keys = [...new Set(keysOf(manual))];
  expect(keys.length).toBeGreaterThan(35);
  const missing = keys.filter((key) => !ELSEWHERE.includes(key) && !sources.includes(`'${key}'`));
  expect(missing).toEqual([]);
});
