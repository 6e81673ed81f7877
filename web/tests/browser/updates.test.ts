// The page on a host of plain files, in a folder of it, and what becomes of an open page when a new
// version is put there.
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { inject, onTestFinished } from 'vitest';
import { writeServiceWorker } from '../../tools/service-worker.mjs';
import { expect, ready, screens, test } from './fixture';
import type { Opened } from './opening';
import { keptOnPhone, lookForUpdate, nothingOnItsWay, shelves, updateWaits } from './phone_files';
import { hostPlainly, type PlainHost } from './plain_host';

/** A copy of the built page that says which version it is. */
async function version(name: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'offplumb-version-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  await cp(inject('pageFolder'), folder, { recursive: true });
  await mark(folder, name);
  writeServiceWorker(folder);
  return folder;
}

/** Writes a version's name into its start page, as `html.dataset.version`. */
async function mark(folder: string, name: string): Promise<void> {
  const start = join(folder, 'index.html');
  const html = await readFile(start, 'utf8');
  await writeFile(start, html.replace(/<html[^>]*>/, `<html lang="en" data-version="${name}">`));
}

function versionOf(page: Page): Promise<string | null> {
  return page.locator('html').getAttribute('data-version');
}

async function hosted(name: string): Promise<PlainHost> {
  const host = await hostPlainly(await version(name));
  onTestFinished(() => host.close());
  return host;
}

async function everyScreenOpens(opened: Opened): Promise<void> {
  for (const screen of screens) {
    await opened.show(screen);
    expect(await opened.page.locator('main').innerText(), `#${screen}`).not.toContain('did not load');
  }
}

test('works from a folder of a host that sends no headers', async ({ openPage }) => {
  const host = await hosted('first');
  const opened = await openPage({ host });
  await everyScreenOpens(opened);
  await keptOnPhone(opened.page);
  await opened.cutNetwork();
  await opened.startAgain();
  await everyScreenOpens(opened);
});

test('a new version waits, and is there at the next start', async ({ openPage }) => {
  const host = await hosted('first');
  const opened = await openPage({ host });
  await keptOnPhone(opened.page);
  host.folder = await version('second');
  await lookForUpdate(opened.page);
  await updateWaits(opened.page);
  // The open page is the first one still, and whole, even if the host goes away now.
  await opened.cutNetwork();
  expect(await versionOf(opened.page)).toBe('first');
  await everyScreenOpens(opened);
  await opened.page.reload();
  await ready(opened.page);
  expect(await versionOf(opened.page)).toBe('first');
  // Closed: only then is nobody of the first version left. The browser may take a moment over it.
  await expect.poll(async () => versionOf(await opened.startAgain()), { timeout: 30_000 })
    .toBe('second');
  await everyScreenOpens(opened);
  expect(await shelves(opened.page)).toHaveLength(1);
});

test('the page may ask for the new version, if it is open once only', async ({ openPage }) => {
  const host = await hosted('first');
  const opened = await openPage({ host });
  await keptOnPhone(opened.page);
  host.folder = await version('second');
  await lookForUpdate(opened.page);
  await updateWaits(opened.page);
  const ask = (): Promise<boolean> => opened.page.evaluate(async () => {
    const { waiting } = await navigator.serviceWorker.ready;
    const { port1, port2 } = new MessageChannel();
    return new Promise<boolean>((answered) => {
      port1.onmessage = (event) => answered(event.data as boolean);
      waiting?.postMessage('take over', [port2]);
    });
  });
  const other = await opened.context.newPage();
  await other.goto(opened.address);
  await ready(other);
  expect(await ask()).toBe(false);
  await other.close();
  expect(await ask()).toBe(true);
  // On a busy machine the browser once took over 20 s to let the older worker go.
  await expect.poll(() => shelves(opened.page), { timeout: 60_000 }).toHaveLength(1);
  await opened.page.reload();
  await ready(opened.page);
  expect(await versionOf(opened.page)).toBe('second');
});

test('half of a new version is not taken', async ({ openPage }) => {
  const host = await hosted('first');
  const opened = await openPage({ host });
  await keptOnPhone(opened.page);
  opened.faults.allow(/integrity|not loaded: .*\/some\/where\//);
  const half = await version('second');
  await mark(half, 'half');
  host.folder = half;
  await lookForUpdate(opened.page);
  await nothingOnItsWay(opened.page);
  await opened.cutNetwork();
  const next = await opened.startAgain();
  expect(await versionOf(next)).toBe('first');
  await everyScreenOpens(opened);
});
