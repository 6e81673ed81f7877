import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { violations } from './axe';
import { expect, test } from './fixture';
import { oneRigger, twoRiggers } from '../unit/example_rigs';

const small = { width: 360, height: 740 };

async function banded(page: Page): Promise<void> {
  await page.locator('.card-screen[aria-busy="false"]').waitFor({ timeout: 90_000 });
}

const heads = (page: Page) => page.locator('.card-frame thead th[scope=col]:not(.corner)');
const counts = (page: Page) => page.locator('.card-frame tbody th');
const place = (page: Page, row: number, column: number) =>
  page.locator('.card-frame tbody tr').nth(row).locator('td').nth(column);

test('counts go down, speeds across, each depth with its band below', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'card', rigs: [oneRigger] });
  await banded(page);
  expect((await heads(page).allInnerTexts()).map((text) => text.split(/\s/)[0])).toEqual(
    ['2.0', '2.2', '2.4', '2.6', '2.8', '3.0', '3.2']);
  expect((await counts(page).allInnerTexts()).slice(0, 3)).toEqual(['20', '40', '60']);
  expect(await place(page, 4, 3).innerText()).toMatch(/^\d+\s+\d+ to \d+$/);
  // Slower is deeper, and so is more line.
  const depth = async (row: number, column: number) => parseInt(await place(page, row, column).innerText(), 10);
  expect(await depth(4, 0)).toBeGreaterThan(await depth(4, 6));
  expect(await depth(5, 3)).toBeGreaterThan(await depth(4, 3));
  const ball = await depth(4, 3);
  await page.getByRole('button', { name: 'Lure' }).tap();
  await expect.poll(() => depth(4, 3)).toBeLessThan(ball);
  expect(await violations(page)).toEqual([]);
});

test('a dash has its reason', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'card', rigs: [oneRigger] });
  await banded(page);
  expect(await place(page, 11, 6).innerText()).toMatch(/^–\s*leans$/);
  expect(await page.locator('.card-key').innerText()).toContain('more than 65 deg at the boom');
});

test('the table scrolls within its own frame, under heads that stay', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'card', rigs: [oneRigger] });
  await banded(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(small.width);
  const frame = page.locator('.card-frame');
  const before = { head: await heads(page).first().boundingBox(), count: await counts(page).nth(3).boundingBox() };
  await frame.evaluate((element) => element.scrollTo(60, 90));
  expect(await frame.evaluate((element) => [element.scrollLeft, element.scrollTop])).toEqual([60, 90]);
  const after = { head: await heads(page).first().boundingBox(), count: await counts(page).nth(3).boundingBox() };
  expect(after.head?.y).toBeCloseTo(before.head?.y ?? 0, 0);
  expect(after.head?.x).toBeCloseTo((before.head?.x ?? 0) - 60, 0);
  expect(after.count?.x).toBeCloseTo(before.count?.x ?? 0, 0);
  expect(after.count?.y).toBeCloseTo((before.count?.y ?? 0) - 90, 0);
});

test('counts and speeds are typed; the engine says what is wrong, and the card stays', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'card', rigs: [oneRigger] });
  await banded(page);
  const field = (name: string) => page.getByRole('group', { name });
  const type = async (group: string, part: string, text: string) => {
    await field(group).getByRole('textbox', { name: part }).fill(text);
    await page.keyboard.press('Tab');
  };
  await type('Counts', 'To', '12 bananas');
  await field('Counts').getByRole('alert').filter({ hasText: 'bananas' }).waitFor();
  expect(await counts(page).count()).toBe(12);
  await type('Counts', 'To', '2000 ft');
  await field('Counts').getByRole('alert').filter({ hasText: '2000' }).waitFor();
  await type('Counts', 'To', '100');
  await expect.poll(() => counts(page).allInnerTexts()).toEqual(['20', '40', '60', '80', '100']);
  expect((await field('Counts').getByRole('alert').innerText()).trim()).toBe('');
  await type('Speeds', 'By', '0.25 mph');
  await expect.poll(async () => (await heads(page).allInnerTexts()).map((text) => text.split(/\s/)[0])).toEqual(
    ['2.0', '2.25', '2.5', '2.75', '3.0']);
  await type('Counts', 'By', '0 ft');
  await field('Counts').getByRole('alert').filter({ hasText: 'a step above 0' }).waitFor();
  await type('Counts', 'By', '0.2 ft');
  await page.getByRole('alert').filter({ hasText: 'at most 60' }).waitFor();
  expect(await counts(page).count()).toBe(5);
  await page.getByRole('button', { name: 'The usual counts again' }).tap();
  await expect.poll(() => counts(page).count()).toBe(12);
  expect(await field('Counts').getByRole('textbox', { name: 'To' }).inputValue()).toBe('240 ft');
});

test('each rigger has a card of its own', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'card', rigs: [twoRiggers] });
  await banded(page);
  await page.getByRole('button', { name: /^starboard/ }).tap();
  await page.getByRole('button', { name: 'Stacked lure' }).waitFor();
  await banded(page);
  expect(await page.locator('.card-rig').innerText()).toContain('starboard');
  expect(await page.locator('.card-paper text').first().textContent()).toContain('starboard');
});

/** Of a PDF as Chromium writes it. */
function pagesOf(pdf: Buffer): { pages: number; box: number[] } {
  const text = pdf.toString('latin1');
  const box = /\/MediaBox\s*\[([\d.\s]+)\]/.exec(text)?.[1]?.trim().split(/\s+/).map(Number) ?? [];
  return { pages: text.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0, box };
}

test('what is printed is the sheet alone, on one page of either paper, black on white', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'card', rigs: [oneRigger], look: 'night' });
  await page.evaluate(() => {
    window.print = () => { document.documentElement.dataset['printed'] = 'yes'; };
  });
  // At once: it waits for the bands by itself.
  await page.getByRole('button', { name: 'Print' }).tap();
  await page.locator('html[data-printed="yes"]').waitFor({ state: 'attached', timeout: 90_000 });
  expect(await page.locator('.card-screen').getAttribute('aria-busy')).toBe('false');
  for (const format of ['A4', 'Letter']) {
    const { pages, box } = pagesOf(await page.pdf({ format }));
    expect(pages, format).toBe(1);
    expect(box[3], format).toBeGreaterThan(box[2] ?? Infinity);
  }
  await page.emulateMedia({ media: 'print' });
  expect((await page.locator('body').innerText()).trim().split('\n')[0]).toContain('Spindrift Sound, one rigger: port');
  for (const hidden of ['.card-frame', '.card-head', '.ways', '.caution', '.series-field']) {
    expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
  }
  const fill = (selector: string) => page.locator(selector).first().evaluate((e) => getComputedStyle(e).fill);
  expect(await fill('.card-paper .area.paper')).toBe('rgb(255, 255, 255)');
  expect(await fill('.card-paper text.ink')).toBe('rgb(0, 0, 0)');
  await page.emulateMedia({ media: 'screen' });
  expect(await fill('.card-paper .area.paper')).toBe('rgb(0, 0, 0)');
});

test('a wide card is printed on its side', async ({ openPage }) => {
  const { page } = await openPage({ screen: 'card', rigs: [oneRigger] });
  await banded(page);
  await page.getByRole('group', { name: 'Speeds' }).getByRole('textbox', { name: 'By' }).fill('0.1');
  await page.keyboard.press('Tab');
  await page.locator('.card-paper.aside').waitFor();
  await banded(page);
  const { pages, box } = pagesOf(await page.pdf({ format: 'A4' }));
  expect(pages).toBe(1);
  expect(box[2]).toBeGreaterThan(box[3] ?? Infinity);
});

test('the sheet is saved as a whole drawing', async ({ openPage }) => {
  const { page } = await openPage({ screen: 'card', rigs: [oneRigger], look: 'night' });
  const coming = page.waitForEvent('download', { timeout: 90_000 });
  await page.getByRole('button', { name: 'Save as SVG' }).tap();
  const download = await coming;
  expect(download.suggestedFilename()).toBe('Spindrift Sound, one rigger, port.svg');
  const text = await readFile(await download.path(), 'utf8');
  const read = await page.evaluate((svg) => {
    const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml');
    const root = drawing.documentElement;
    return { name: root.nodeName, wrong: drawing.querySelectorAll('parsererror').length,
      texts: root.querySelectorAll('text').length, width: root.getAttribute('width'),
      paper: root.querySelector('rect')?.getAttribute('fill'),
      first: root.querySelector('text')?.textContent };
  }, text);
  expect(read).toMatchObject({ name: 'svg', wrong: 0, paper: '#ffffff', width: '210mm',
    first: 'Spindrift Sound, one rigger: port' });
  expect(read.texts).toBeGreaterThan(100);
});
