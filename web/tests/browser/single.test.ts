// The one file, opened from the disk.
import { readFile } from 'node:fs/promises';
import { inject } from 'vitest';
import { expect, test } from './fixture';

test('starts its engine from the disk, and again after a reload', async ({ openPage }) => {
  const { page, address } = await openPage({ form: 'single' });
  expect(address).toMatch(/^file:/);
  await page.reload();
  await page.locator('html[data-engine="ready"]').waitFor({ state: 'attached' });
});

test('fetches nothing and keeps no files of its own', async ({ openPage }) => {
  const { page, context } = await openPage({ form: 'single' });
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  await page.reload();
  await page.locator('html[data-engine="ready"]').waitFor({ state: 'attached' });
  const others = asked.filter((url) => !/^(file|blob|data):/.test(url));
  expect(others).toEqual([]);
  expect(asked.filter((url) => url.startsWith('file:'))).toHaveLength(1);
});

test('holds nothing that looks for files beside it', async () => {
  const html = await readFile(inject('singleFile'), 'utf8');
  const script = /<script>([^]*?)<\/script>/.exec(html)?.[1] ?? '';
  expect(script.length).toBeGreaterThan(1000);
  expect(script).not.toMatch(/import\.meta|\bfetch\(|serviceWorker|type:"module"/);
  expect(html).not.toMatch(/<(script|link|img)[^>]*(src|href)="(?!data:)/);
  expect(html.match(/<\/script/g)).toHaveLength(3);
});
