import { describe } from 'vitest';
import { expect, screens, test } from './fixture';
import { keptOnPhone, shelves } from './phone_files';
import type { Opened } from './opening';

/** All that a person can do with the page, with nothing to fetch it from. */
async function useAll(opened: Opened): Promise<void> {
  for (const screen of screens) {
    await opened.show(screen);
    expect(await opened.page.locator('main').innerText(), `#${screen}`).not.toContain('did not load');
  }
}

describe('with the network gone after the first visit', () => {
  test('the page goes on, screens never opened before as well', async ({ openPage }) => {
    const opened = await openPage();
    await keptOnPhone(opened.page);
    await opened.cutNetwork();
    await useAll(opened);
  });

  test('the page opens again and the engine starts', async ({ openPage }) => {
    const opened = await openPage();
    await keptOnPhone(opened.page);
    await opened.cutNetwork();
    await opened.page.reload();
    await opened.page.locator('html[data-engine="ready"]').waitFor({ state: 'attached' });
    await useAll(opened);
    await opened.startAgain();
    await useAll(opened);
  });

  test('the address of the start page by its file name works too', async ({ openPage }) => {
    const opened = await openPage();
    await keptOnPhone(opened.page);
    await opened.cutNetwork();
    await opened.page.goto(`${opened.address}index.html?from=home#card`);
    await opened.page.locator('html[data-engine="ready"]').waitFor({ state: 'attached' });
  });
});

test('one shelf is kept, with every file of the page', async ({ openPage }) => {
  const { page } = await openPage();
  await keptOnPhone(page);
  const kept = await shelves(page);
  expect(kept).toHaveLength(1);
  const paths = kept[0]?.paths ?? [];
  expect(paths).toContain('/');
  expect(paths.some((path) => path.endsWith('.wasm'))).toBe(true);
  expect(paths.some((path) => /worker-.*\.js$/.test(path))).toBe(true);
  expect(paths).not.toContain('/sw.js');
});
