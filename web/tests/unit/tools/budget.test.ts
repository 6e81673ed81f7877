import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';

/** A page whose first load is so many bytes that cannot be packed. */
async function pageOf(bytes: number): Promise<string> {
  const parent = await mkdtemp(join(tmpdir(), 'offplumb-weight-'));
  onTestFinished(() => rm(parent, { recursive: true, force: true }));
  const folder = join(parent, 'page');
  await mkdir(folder);
  await writeFile(join(folder, 'page.js'), randomBytes(bytes));
  await writeFile(join(folder, 'sw.js'), '');
  await writeFile(`${folder}.parts.json`, JSON.stringify({ first: { script: ['page.js'] }, screens: {} }));
  return folder;
}

function weigh(folder: string) {
  return spawnSync(process.execPath, ['tools/budget.mjs'], {
    encoding: 'utf8', env: { ...process.env, OFFPLUMB_PAGE_OUT: folder },
  });
}

test('a first load over 300 kB is refused, and what is over its budget is named', async () => {
  const { status, stderr } = weigh(await pageOf(310_000));
  expect(status).toBe(1);
  expect(stderr).toMatch(/the first load is 310\d\d\d bytes in all; at most 300000/);
  expect(stderr).toMatch(/first load "script": 310\d\d\d bytes, budget \d+ and 5 %/);
});

test('a budget for what is not built any more is named', async () => {
  const { status, stderr } = weigh(await pageOf(1000));
  expect(status).toBe(1);
  expect(stderr).toMatch(/first load "engine" has a budget but is not built any more/);
});

test('where nothing is built it says so', () => {
  const { status, stderr } = weigh(join(tmpdir(), 'offplumb-no-page-here'));
  expect(status).toBe(1);
  expect(stderr).toMatch(/There is no built page in .*Build it first/);
});
