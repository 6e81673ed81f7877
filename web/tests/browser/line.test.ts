// The first screen under a finger, by keys, and typed; what cannot be; and that it does not grow.
import type { Page } from 'playwright-core';
import { expect, test } from './fixture';
import { sixRiggers, twoRiggers } from '../unit/example_rigs';
import { drag, dragFrom, middleOf } from './touch';

const small = { width: 360, height: 740 };
const ruler = (page: Page, name: string) => page.getByRole('slider', { name, exact: true });
const figure = (page: Page, name: string) =>
  page.locator('.figure').filter({ has: page.getByText(name, { exact: true }) });

/** What a figure says, as a number. */
async function read(page: Page, name: string): Promise<number> {
  const text = await figure(page, name).locator('.digits').innerText();
  const value = Number(/-?\d+(\.\d+)?/.exec(text)?.[0]);
  if (!Number.isFinite(value)) throw new Error(`no number in "${text}"`);
  return value;
}

/** Waits for the whole band: then it is no longer drawn dashed. */
async function rested(page: Page): Promise<void> {
  await page.waitForTimeout(250);
  await page.locator('svg.side .selected .band-bar:not(.rough)').first()
    .waitFor({ state: 'attached', timeout: 20_000 });
}

test('answers before anything is asked', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await rested(page);
  // As the command line answers for the same rig, count and speed (README).
  expect(await read(page, 'Ball')).toBe(86);
  expect(await figure(page, 'Ball').locator('.band').innerText()).toBe('80 to 89');
  expect(await read(page, 'Lure')).toBe(83);
  expect(await figure(page, 'Lure').locator('.band').innerText()).toBe('77 to 87');
  expect(await page.locator('svg.side').getAttribute('aria-label')).toContain('Ball 86 ft, 80 to 89');
});

test('follows the finger on each ruler', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await drag(page, ruler(page, 'Count'), -50);
  expect(await ruler(page, 'Count').getAttribute('aria-valuetext')).toBe('110 ft');
  await rested(page);
  const deeper = await read(page, 'Ball');
  expect(deeper).toBeGreaterThan(88);
  await drag(page, ruler(page, 'Speed'), -42);
  expect(await ruler(page, 'Speed').getAttribute('aria-valuetext')).toBe('3.0 mph');
  await rested(page);
  const faster = await read(page, 'Ball');
  expect(faster).toBeLessThan(deeper);
  await drag(page, ruler(page, 'Ball'), -84);
  expect(await ruler(page, 'Ball').getAttribute('aria-valuetext')).toBe('15.0 lb');
  await rested(page);
  expect(await read(page, 'Ball')).toBeGreaterThan(faster);
});

test('says how far the ball is off the bottom, or that it lies there', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await rested(page);
  await page.getByRole('button', { name: 'Bottom' }).click();
  await page.getByRole('button', { name: 'Draw the bottom' }).click();
  expect(await ruler(page, 'Bottom').getAttribute('aria-valuetext')).toBe('120 ft');
  // The ball is at 86 ft, 80 to 89. A bottom asks nothing of the engine: the bands stay.
  await expect.poll(() => read(page, 'Off bottom')).toBe(34);
  expect(await figure(page, 'Off bottom').locator('.band').innerText()).toBe('31 to 40');
  await ruler(page, 'Bottom').focus();
  for (let i = 0; i < 4; i += 1) await page.keyboard.press('PageDown');
  expect(await ruler(page, 'Bottom').getAttribute('aria-valuetext')).toBe('80 ft');
  await expect.poll(() => read(page, 'On bottom by')).toBe(6);
  expect(await figure(page, 'Off bottom').count()).toBe(0);
  await page.getByRole('button', { name: 'Take the bottom away' }).click();
  await expect.poll(() => figure(page, 'On bottom by').count()).toBe(0);
  expect(await read(page, 'Ball')).toBe(86);
  expect(await read(page, 'Lure')).toBe(83);
});

test('the ball itself can be taken hold of', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await rested(page);
  const ball = page.locator('svg.side .selected .ball');
  const before = await middleOf(ball);
  await dragFrom(page, before, 0, 40);
  await rested(page);
  const count = Number(await ruler(page, 'Count').getAttribute('aria-valuenow'));
  expect(count).toBeGreaterThan(105);
});

test('a current with depth is dragged in the drawing', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await rested(page);
  const still = await read(page, 'Ball');
  await page.getByRole('button', { name: 'Current' }).tap();
  await page.getByRole('button', { name: 'Add' }).tap();
  const point = page.locator('.current-profile [data-point="1"] .dot');
  await dragFrom(page, await middleOf(point), -40, 0);
  await rested(page);
  expect(await page.locator('.current-tool').innerText()).toContain('against me');
  expect(await read(page, 'Ball')).toBeLessThan(still);
  await page.getByRole('button', { name: 'Still water' }).tap();
  await rested(page);
  expect(await read(page, 'Ball')).toBe(still);
});

test('a value that cannot be keeps the last good drawing and says what would do', async ({ openPage }) => {
  const { page } = await openPage({ size: small });
  await rested(page);
  await page.getByRole('button', { name: /Count/ }).tap();
  const field = page.getByRole('textbox', { name: 'Count' });
  await field.fill('9999');
  await page.getByText('out of range').waitFor();
  await page.getByRole('button', { name: 'Set' }).tap();
  expect(await read(page, 'Ball')).toBe(86);
  await field.fill('2');
  await page.getByRole('button', { name: 'Set' }).tap();
  // A clip above the water: words, and the last drawing stays.
  await page.getByRole('alert').filter({ hasText: 'above the water' }).waitFor();
  expect(await read(page, 'Ball')).toBe(86);
  expect(await page.locator('body').innerText()).not.toContain('NaN');
});

test('each of several riggers has a count of its own', async ({ openPage }) => {
  const { page } = await openPage({ size: small, rigs: [twoRiggers] });
  await rested(page);
  await page.getByRole('button', { name: /^starboard/ }).tap();
  await drag(page, ruler(page, 'Count'), 100);
  await rested(page);
  expect(await page.getByRole('button', { name: /^starboard/ }).innerText()).toContain('80');
  expect(await page.getByRole('button', { name: /^port/ }).innerText()).toContain('100');
  expect(await page.locator('svg.side .rigger').count()).toBe(2);
});

test('six riggers are drawn, and each can be taken in hand', async ({ openPage }) => {
  const { page } = await openPage({ size: small, rigs: [sixRiggers] });
  await rested(page);
  expect(await page.locator('svg.side .rigger').count()).toBe(6);
  await page.getByRole('button', { name: /^starboard bow/ }).tap();
  await drag(page, ruler(page, 'Count'), -50);
  await rested(page);
  expect(await page.getByRole('button', { name: /^starboard bow/ }).innerText()).toContain('110');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(small.width);
});

test('keys alone do it all', async ({ openPage }) => {
  const { page } = await openPage({ size: { width: 1440, height: 900 } });
  await rested(page);
  await ruler(page, 'Count').focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowRight');
  expect(await ruler(page, 'Count').getAttribute('aria-valuetext')).toBe('111 ft');
  await page.keyboard.press('Home');
  expect(await ruler(page, 'Count').getAttribute('aria-valuetext')).toBe('0 ft');
});

test('ten thousand solves leave no more behind than a thousand', async ({ openPage }) => {
  const { page, context } = await openPage({ size: small });
  await rested(page);
  const session = await context.newCDPSession(page);
  const heap = async (): Promise<number> => {
    // At rest, or a drawing under way and what it holds would be counted too.
    await rested(page);
    await session.send('HeapProfiler.collectGarbage');
    await session.send('HeapProfiler.collectGarbage');
    return (await session.send('Runtime.getHeapUsage')).usedSize;
  };
  /** Turns the count up and down by keys; each turn waits for a drawing that differs. */
  const turns = (many: number): Promise<number> => page.evaluate(async (wanted) => {
    const slider = document.querySelector('[role="slider"][aria-label="Count"]');
    const line = document.querySelector('svg.side .selected .main-line');
    if (!slider || !line) throw new Error('no count or no line');
    let drawn = 0;
    const watch = new MutationObserver(() => { drawn += 1; });
    watch.observe(line, { attributes: true, attributeFilter: ['d'] });
    for (let i = 0; drawn < wanted; i += 1) {
      const seen = drawn;
      const key = i % 60 < 30 ? 'ArrowRight' : 'ArrowLeft';
      slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
      for (let wait = 0; drawn === seen && wait < 500; wait += 1) {
        await new Promise((done) => { const c = new MessageChannel(); c.port1.onmessage = done; c.port2.postMessage(0); });
      }
    }
    watch.disconnect();
    return drawn;
  }, many);

  expect(await turns(1000)).toBeGreaterThanOrEqual(1000);
  const before = await heap();
  expect(await turns(9000)).toBeGreaterThanOrEqual(9000);
  const after = await heap();
  // A leak of one answer (5 kB) a solve would be 45 MB.
  expect(after - before).toBeLessThan(2_000_000);
}, 240_000);
