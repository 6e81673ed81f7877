// What the browser keeps of the page for use with no network.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Waits until this version is put by whole and answers for this page. */
export async function keptOnPhone(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller) return;
    await new Promise((done) => {
      navigator.serviceWorker.addEventListener('controllerchange', done, { once: true });
    });
  });
}

export function shelves(page: Page): Promise<{ name: string; paths: string[] }[]> {
  return page.evaluate(async () => {
    const names = await caches.keys();
    return Promise.all(names.map(async (name) => {
      const requests = await (await caches.open(name)).keys();
      return { name, paths: requests.map((request) => new URL(request.url).pathname) };
    }));
  });
}

/** Asks the host whether there is a newer version, as the browser does at a start. */
export async function lookForUpdate(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.ready).update().catch(() => undefined);
  });
}

/** Waits until a newer version is put by and waits for the next start. */
export async function updateWaits(page: Page): Promise<void> {
  await expect.poll(
    () => page.evaluate(async () => Boolean((await navigator.serviceWorker.ready).waiting)),
    { timeout: 20_000 }).toBe(true);
}

/** Waits until nothing is being put by. */
export async function nothingOnItsWay(page: Page): Promise<void> {
  await expect.poll(
    () => page.evaluate(async () => Boolean((await navigator.serviceWorker.ready).installing)),
    { timeout: 20_000 }).toBe(false);
}
