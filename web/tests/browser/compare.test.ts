import type { Page } from 'playwright-core';
import { violations } from './axe';
import { expect, laptop, test } from './fixture';
import { oneRigger, twoRiggers } from '../unit/example_rigs';

const small = { width: 360, height: 740 };
const broken = 'name = "My broken boat"\n[[riggers\n';

async function banded(page: Page): Promise<void> {
  await page.locator('.compare[aria-busy="false"]').waitFor({ timeout: 90_000 });
}

const rows = (page: Page) => page.locator('.compare-row');
const depthAt = async (page: Page, row: number, count: number) =>
  parseInt(await rows(page).nth(row).locator('tbody tr').nth(count).locator('td').first().innerText(), 10);

test('each rigger of each rig has its reach, depths, pulls and gains', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'compare', rigs: [oneRigger, twoRiggers] });
  await banded(page);
  expect((await rows(page).locator('h2').allInnerTexts()).map((text) => text.replace(/\s+/g, ' '))).toEqual([
    'A Spindrift Sound, one rigger', 'B Spindrift Sound, two riggers: port',
    'C Spindrift Sound, two riggers: starboard']);
  expect((await rows(page).first().locator('.compare-reach').innerText()).replace(/\s+/g, ' ')).toMatch(
    /^Reaches \d+ ft, \d+ to \d+$/);
  expect(await rows(page).first().innerText()).toContain('where the line leans 65 deg at the boom.');
  expect(await rows(page).nth(2).innerText()).toContain('where the line on the reel ends.');
  const line = await rows(page).first().locator('tbody tr').nth(1).innerText();
  expect(line.replace(/\s+/g, ' ')).toMatch(/^100 \d+ \d+ to \d+ \d+\.\d \d+\.\d to \d+\.\d$/);
  expect(await rows(page).first().innerText()).toMatch(/A ball 1 lb heavier: \d+\.\d ft deeper\./);
  expect(await violations(page)).toEqual([]);
});

test('rigs are picked; one that cannot be read is named and left out', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'compare', rigs: [oneRigger, broken, twoRiggers] });
  await banded(page);
  const pick = page.getByRole('group', { name: 'Rigs' });
  expect(await pick.innerText()).toContain('My broken boat is left out, since it cannot be read:');
  expect(await pick.getByRole('checkbox').count()).toBe(2);
  expect(await rows(page).count()).toBe(3);
  await pick.getByRole('checkbox', { name: 'Spindrift Sound, two riggers' }).uncheck();
  await expect.poll(() => rows(page).count()).toBe(1);
  await pick.getByRole('checkbox', { name: 'Spindrift Sound, one rigger' }).uncheck();
  expect(await pick.getByRole('alert').innerText()).toContain('Pick at least one rig');
  expect(await rows(page).count()).toBe(0);
  await pick.getByRole('checkbox', { name: 'Spindrift Sound, two riggers' }).check();
  await expect.poll(() => rows(page).count()).toBe(2);
});

test('the figures follow the speed', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'compare', rigs: [oneRigger] });
  await banded(page);
  const before = await depthAt(page, 0, 3);
  await page.getByRole('slider', { name: 'Speed' }).focus();
  for (let i = 0; i < 5; i += 1) await page.keyboard.press('ArrowRight');
  await expect.poll(() => depthAt(page, 0, 3)).toBeLessThan(before);
});

test('the drawing has one scale for count and depth, and a line for each', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'compare', rigs: [oneRigger, twoRiggers] });
  await banded(page);
  expect(await page.locator('.compare-drawing .curve').count()).toBe(3);
  expect(await page.locator('.compare-drawing .curve text').allTextContents()).toEqual(['A', 'B', 'C']);
  const dashes = await page.locator('.compare-drawing .curve path').evaluateAll(
    (paths) => paths.map((path) => path.getAttribute('stroke-dasharray') ?? ''));
  expect(new Set(dashes).size).toBe(3);
  const rulings = await page.locator('.compare-drawing .ruling line').evaluateAll((lines) => lines.map((line) =>
    ['x1', 'x2', 'y1', 'y2'].map((name) => Number(line.getAttribute(name)))));
  const upright = rulings.filter(([x1, x2]) => x1 === x2).map(([x1]) => x1 ?? 0);
  const level = rulings.filter(([x1, x2, y1, y2]) => x1 !== x2 && y1 === y2).map(([, , y1]) => y1 ?? 0);
  expect(level.length).toBeGreaterThan(1);
  const step = (upright[1] ?? 0) - (upright[0] ?? 0);
  expect((level[1] ?? 0) - (level[0] ?? 0)).toBeCloseTo(step, 6);
});

test('counts are typed, and the engine says when there are too many', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'compare', rigs: [oneRigger] });
  await banded(page);
  const field = page.getByRole('group', { name: 'Counts' });
  await field.getByRole('textbox', { name: 'By' }).fill('75 ft');
  await page.keyboard.press('Tab');
  await expect.poll(() => rows(page).first().locator('tbody th').allInnerTexts()).toEqual(['50', '125', '200']);
  await field.getByRole('textbox', { name: 'By' }).fill('1');
  await page.keyboard.press('Tab');
  await page.getByRole('alert').filter({ hasText: 'at most 12' }).waitFor();
  expect(await rows(page).first().locator('tbody th').count()).toBe(3);
});

test('one below the other on a phone, side by side where there is room', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'compare', rigs: [oneRigger, twoRiggers] });
  await banded(page);
  const tops = async () => (await Promise.all((await rows(page).all()).map((row) => row.boundingBox())))
    .map((box) => Math.round(box?.y ?? 0));
  expect(new Set(await tops()).size).toBe(3);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(small.width);
  await page.setViewportSize(laptop);
  await expect.poll(async () => new Set(await tops()).size).toBe(1);
  expect(await page.getByRole('link', { name: 'Rigs', exact: true }).first().getAttribute('href')).toBe('#rigs');
});
