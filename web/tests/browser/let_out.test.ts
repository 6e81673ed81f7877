import type { Page } from 'playwright-core';
import { violations } from './axe';
import { expect, test } from './fixture';
import { oneRigger, twoRiggers } from '../unit/example_rigs';
import { drag } from './touch';

const FOOT = 0.3048;
const MPH = 0.44704;
const small = { width: 360, height: 740 };

const digits = (page: Page) => page.locator('.let-out-digits');
const ruler = (page: Page, name: string) => page.getByRole('slider', { name, exact: true });

async function rested(page: Page): Promise<void> {
  await page.locator('.let-out[aria-busy="false"]').waitFor({ timeout: 90_000 });
}

/** The number of a text like "Let out 108 ft". */
async function numberIn(page: Page, selector: string, index = 0): Promise<number> {
  const text = await page.locator(selector).nth(index).innerText();
  const found = /-?\d+(\.\d+)?/.exec(text.replace(/\s+/g, ' '));
  if (!found) throw new Error(`no number in "${text}"`);
  return Number(found[0]);
}

/** The parts that lie, whole, between the top of the screen and the ways at its foot. */
async function inSight(page: Page, selector: string): Promise<boolean> {
  const ways = await page.locator('.ways').boundingBox();
  const boxes = await Promise.all((await page.locator(selector).all()).map((one) => one.boundingBox()));
  return boxes.length > 0 && boxes.every((box) => box !== null && box.y >= 0 &&
    box.x >= 0 && box.x + box.width <= small.width && box.y + box.height <= (ways?.y ?? 0) + 0.5);
}

test('a new user gets the count with the thumb, without scrolling', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await page.getByRole('link', { name: 'Let out' }).tap();
  await digits(page).waitFor();
  await drag(page, ruler(page, 'Depth'), -50);
  await drag(page, ruler(page, 'Depth'), 50);
  await drag(page, ruler(page, 'Ball'), -3 * 28);
  await drag(page, ruler(page, 'Speed'), 14);
  expect(await ruler(page, 'Depth').getAttribute('aria-valuetext')).toBe('90 ft');
  expect(await ruler(page, 'Ball').getAttribute('aria-valuetext')).toBe('15.0 lb');
  expect(await ruler(page, 'Speed').getAttribute('aria-valuetext')).toBe('2.6 mph');
  await rested(page);

  const count = await numberIn(page, '.let-out-digits');
  expect(count).toBeGreaterThan(90);
  expect(await page.locator('.let-out-band').innerText()).toMatch(/^\d+ to \d+$/);
  const [low, high] = (await page.locator('.let-out-band').innerText()).split(' to ').map(Number);
  expect(count).toBeGreaterThanOrEqual(low ?? Infinity);
  expect(count).toBeLessThanOrEqual(high ?? -Infinity);

  const size = await digits(page).evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
  expect(size).toBeGreaterThanOrEqual(72);
  expect(await page.evaluate(() => scrollY)).toBe(0);
  for (const part of ['.let-out-digits', '.let-out-band', '.let-out-there', '.let-out-set', '.ruler',
    '.let-out-wanted .button']) {
    expect(await inSight(page, part), part).toBe(true);
  }

  // The loop closed: at this count the first screen has the lure at the depth asked for.
  await page.getByRole('button', { name: /^Set this count/ }).tap();
  await page.getByRole('link', { name: 'Line' }).tap();
  await expect.poll(() => ruler(page, 'Count').getAttribute('aria-valuetext')).toBe(`${count} ft`);
  await expect.poll(() => page.locator('.figure', { hasText: 'Lure' }).innerText()).toMatch(/\b90\s*ft/);
});

test('setting a count can be taken back', async ({ openPage }) => {
  const opened = await openPage({ size: small, screen: 'let-out', rigs: [oneRigger],
    hand: { counts_m: { port: 77 * FOOT } } });
  const { page } = opened;
  await digits(page).waitFor();
  const set = page.getByRole('button', { name: /^Set this count/ });
  expect(await set.innerText()).toContain('now 77 ft');
  await set.tap();
  const count = await numberIn(page, '.let-out-digits');
  expect(await page.locator('.notice').innerText()).toContain(`The line of port is set to ${count} ft.`);
  await expect.poll(() => set.innerText()).toContain(`now ${count} ft`);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await expect.poll(() => set.innerText()).toContain('now 77 ft');
  await opened.show('line');
  expect(await ruler(page, 'Count').getAttribute('aria-valuetext')).toBe('77 ft');
});

test('the ball and the lure are asked for by one tap, and the other is told', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'let-out', rigs: [oneRigger] });
  await rested(page);
  const ofLure = await numberIn(page, '.let-out-digits');
  expect(await page.locator('.let-out-there').innerText()).toMatch(/Ball\s*\d+ ft, \d+ to \d+: mind the bottom/);
  expect(await page.locator('.let-out-there').innerText()).toMatch(/Line leans\s*\d+ deg at the boom/);
  await page.getByRole('button', { name: 'Ball', exact: true }).tap();
  await expect.poll(() => numberIn(page, '.let-out-digits')).toBeLessThan(ofLure);
  await rested(page);
  expect(await page.locator('.let-out-there').innerText()).toMatch(/^Lure\s*\d+ ft/);
});

test('a depth out of reach has its reason and the remedies, and no digits', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'let-out', rigs: [oneRigger],
    hand: { wanted: { depth_m: 300 * FOOT, of: 'ball' }, speed_mps: 2.7 * MPH } });
  await rested(page);
  const words = await page.locator('.let-out-rigger').innerText();
  expect(words).toContain('No count puts the ball at 300 ft.');
  expect(words).toMatch(new RegExp('The deepest the ball goes: \\d+ ft, \\d+ to \\d+, at a count of ' +
    '\\d+ ft, where the line leans 65 deg at the boom\\.'));
  expect(words).toMatch(/It gets there at a speed of \d\.\d mph\./);
  expect(await digits(page).count()).toBe(0);
  expect(await page.getByRole('button', { name: /^Set this count/ }).count()).toBe(0);
  expect(await inSight(page, '.let-out-no')).toBe(true);
  expect(await violations(page)).toEqual([]);
  // Slower, as the remedy says, and there it is.
  await ruler(page, 'Speed').focus();
  for (let i = 0; i < 9; i += 1) await page.keyboard.press('ArrowLeft');
  await digits(page).waitFor();
  expect(await numberIn(page, '.let-out-digits')).toBeGreaterThan(300);
});

test('what the engine refuses is said, and the last count stays, marked', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'let-out', rigs: [twoRiggers],
    hand: { rigger: 'starboard', wanted: { depth_m: 40 * FOOT, of: 'ball' } } });
  await digits(page).nth(1).waitFor();
  const before = await digits(page).nth(1).innerText();
  await ruler(page, 'Depth').focus();
  await page.keyboard.press('Home');
  const starboard = page.getByRole('group', { name: 'starboard' });
  await starboard.getByRole('alert').waitFor();
  expect((await starboard.getByRole('alert').innerText()).length).toBeGreaterThan(20);
  expect(await digits(page).nth(1).innerText()).toBe(before);
  expect(await starboard.getByRole('button', { name: /^Set this count/ }).isDisabled()).toBe(true);
});

test('two riggers answer side by side; the chosen one has its own ball and lures', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'let-out', rigs: [twoRiggers] });
  await rested(page);
  expect(await digits(page).count()).toBe(2);
  for (const part of ['.let-out-digits', '.let-out-set', '.ruler']) expect(await inSight(page, part), part).toBe(true);
  const port = await numberIn(page, '.let-out-digits', 0);
  expect(await page.locator('.let-out-wanted .button').allInnerTexts()).toEqual(['Ball', 'Lure']);
  await page.getByRole('button', { name: 'starboard', exact: true }).tap();
  expect(await page.locator('.let-out-wanted .button').allInnerTexts()).toEqual(['Ball', 'Low lure', 'Stacked lure']);
  expect(await ruler(page, 'Ball').getAttribute('aria-valuetext')).toBe('15.0 lb');
  const low = await numberIn(page, '.let-out-digits', 1);
  await page.getByRole('button', { name: 'Stacked lure' }).tap();
  await expect.poll(() => numberIn(page, '.let-out-digits', 1)).toBeGreaterThan(low);
  expect(await numberIn(page, '.let-out-digits', 0)).toBe(port);
});

test('where there is room the line is drawn at the count found', async ({ openPage }) => {
  const { page } = await openPage({ size: { width: 1440, height: 900 }, screen: 'let-out', rigs: [oneRigger] });
  await rested(page);
  const count = await numberIn(page, '.let-out-digits');
  await expect.poll(() => page.locator('.let-out-board').innerHTML()).toContain(`count ${count}<`);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1440);
});

test('with no rig that can be read there are words and a way', async ({ openPage }) => {
  const { page } = await openPage({ size: small, screen: 'let-out', rigs: ['name = "x"\n[[riggers\n'] });
  expect(await page.locator('main').innerText()).toContain('There is no rig that can be read.');
  expect(await page.locator('main').getByRole('link', { name: 'Rigs' }).getAttribute('href')).toBe('#rigs');
});
