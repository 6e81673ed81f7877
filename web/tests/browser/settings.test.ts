// Settings: what is chosen once, and everything in one file.
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { violations } from './axe';
import { expect, test } from './fixture';

const rigFile = (name: string): string =>
  readFileSync(new URL(`../../../examples/rigs/${name}.toml`, import.meta.url), 'utf8');
const earlier = readFileSync(new URL('../unit/kept/version-1.json', import.meta.url), 'utf8');
const one = rigFile('one-rigger');
const two = rigFile('two-riggers');

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const bringIn = (page: Page, name: string, text: string) =>
  page.locator('input[data-import="everything"]').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
const rigNames = async (opened: { page: Page; show(screen: 'rigs' | 'settings'): Promise<void> }): Promise<string[]> => {
  await opened.show('rigs');
  const found = await opened.page.locator('.rig-row h2').evaluateAll((rows) => rows.map((row) => row.firstChild?.textContent ?? ''));
  await opened.show('settings');
  return found;
};

describe('what is chosen', () => {
  test('counts at once, on every screen, and at the next start', async ({ openPage }) => {
    const opened = await openPage({ rigs: [one], screen: 'settings' });
    expect(await opened.page.getByText(/^As in:/).innerText()).toMatch(/90 ft, 2\.7 mph, 12\.0 lb/);
    await press(opened.page, 'Metric');
    await expect.poll(() => opened.page.getByText(/^As in:/).innerText()).toMatch(/27\.4 m, .* kg, .* N/);
    await press(opened.page, 'Night, dim red');
    await expect.poll(() => opened.page.locator('html').getAttribute('data-look')).toBe('night');
    await press(opened.page, 'Fresh');
    await opened.page.getByRole('switch', { name: 'Keep the screen on' }).click();
    const page = await opened.startAgain();
    await expect.poll(() => page.locator('html').getAttribute('data-look')).toBe('night');
    await opened.show('settings');
    for (const name of ['Metric', 'Night, dim red', 'Fresh']) {
      expect(await page.getByRole('button', { name, exact: true }).getAttribute('aria-pressed')).toBe('true');
    }
    expect(await page.getByRole('switch').getAttribute('aria-checked')).toBe('true');
    await opened.show('line');
    expect(await page.locator('main').innerText()).toMatch(/\d m\b/);
  });

  test('of the water changes the answer', async ({ openPage }) => {
    const opened = await openPage({ rigs: [one], screen: 'settings', units: 'metric' });
    const ballDepth = async (): Promise<number> => {
      await opened.show('line');
      const picture = opened.page.locator('svg.side');
      await expect.poll(() => picture.getAttribute('aria-label')).toMatch(/Ball \d/);
      const words = await picture.getAttribute('aria-label');
      await opened.show('settings');
      return Number(/Ball ([\d.]+) m/.exec(words ?? '')?.[1]);
    };
    const salt = await ballDepth();
    await press(opened.page, 'Fresh');
    expect(await ballDepth()).toBeGreaterThan(salt);
    await press(opened.page, 'Salt');
    expect(await ballDepth()).toBe(salt);
  });
});

test('tells what the page can do here, the cautions, the version and the licence', async ({ openPage }) => {
  const { page } = await openPage({ screen: 'settings' });
  const words = await page.locator('main').innerText();
  expect(words).toMatch(/Not for navigation/);
  expect(words).toMatch(/Page \d+\.\d+\.\d+, engine \d+\.\d+\.\d+/);
  expect(words).toMatch(/docs\/method\.md/);
  expect(await page.locator('[data-door]').count()).toBe(5);
  await page.getByText('The licence', { exact: true }).click();
  expect(await page.locator('.settings-licence').innerText()).toMatch(/MIT License.*Permission is hereby granted/s);
});

describe.each(['static', 'single'] as const)('everything in one file, in the %s form', (form) => {
  test('goes from one phone to another', async ({ openPage }) => {
    const here = await openPage({ form, rigs: [one, two], screen: 'settings', units: 'metric' });
    const [saved] = await Promise.all([here.page.waitForEvent('download'), press(here.page, 'Export')]);
    expect(saved.suggestedFilename()).toMatch(/^offplumb-\d{4}-\d\d-\d\d\.json$/);
    const text = await readFile(await saved.path(), 'utf8');

    const mine = one.replace('Spindrift Sound, one rigger', 'Mine').replace('invented = true', '');
    const there = await openPage({ form, rigs: [mine], screen: 'settings' });
    await bringIn(there.page, 'all.json', text);
    await there.page.getByText('new here').first().waitFor();
    expect(await rigNames(there)).toEqual(['Mine']);
    await bringIn(there.page, 'all.json', text);
    await press(there.page, 'Rigs, settings and what is in hand');
    expect(await there.page.getByRole('button', { name: 'Metric' }).getAttribute('aria-pressed')).toBe('true');
    expect(await rigNames(there)).toEqual(['Mine', 'Spindrift Sound, one rigger', 'Spindrift Sound, two riggers']);
    await press(there.page, 'Undo');
    expect(await rigNames(there)).toEqual(['Mine']);
    expect(await there.page.getByRole('button', { name: 'Metric' }).getAttribute('aria-pressed')).toBe('false');
  });

  test('that is none is refused and changes nothing', async ({ openPage }) => {
    const opened = await openPage({ form, rigs: [one], screen: 'settings' });
    for (const [text, words] of [['{', /broken/], ['{"a":1}', /not a file of this page/],
      ['{"format":"offplumb-page","version":99}', /version is 99/]] as const) {
      await bringIn(opened.page, 'x.json', text);
      await opened.page.locator('.settings-offer.wrong', { hasText: words }).waitFor();
    }
    expect(await rigNames(opened)).toEqual(['Spindrift Sound, one rigger']);
  });
});

describe('what an earlier page kept', () => {
  test('is all there after an update', async ({ openPage }) => {
    const opened = await openPage({ screen: 'settings' });
    await opened.page.evaluate(() => dispatchEvent(new Event('pagehide')));
    await opened.page.goto('about:blank');
    await opened.context.addInitScript((text) => {
      try {
        if (sessionStorage.getItem('put') === null) localStorage.setItem('offplumb', text);
        sessionStorage.setItem('put', 'yes');
      } catch {
        // The empty page has no storage.
      }
    }, earlier);
    const page = await opened.startAgain();
    await expect.poll(() => page.locator('html').getAttribute('data-look')).toBe('night');
    expect(await rigNames(opened)).toEqual(['Spindrift Sound, one rigger', 'Own boat', 'Half written']);
    await opened.show('rigs');
    expect(await page.locator('.rig-row.in-use h2').innerText()).toContain('Own boat');
  });

  test('and cannot be read is set aside and can be saved', async ({ openPage }) => {
    const opened = await openPage({ screen: 'settings' });
    await opened.page.evaluate(() => dispatchEvent(new Event('pagehide')));
    await opened.page.evaluate(() => localStorage.setItem('offplumb', '{"format":"offplumb-page","version":7,"rigs":[]}'));
    await opened.page.reload();
    await opened.page.getByText(/its version is 7/).waitFor();
    const [saved] = await Promise.all([opened.page.waitForEvent('download'), press(opened.page, 'Save')]);
    expect(await readFile(await saved.path(), 'utf8')).toContain('"version":7');
    await press(opened.page, 'Remove');
    expect(await opened.page.getByText('Set aside').count()).toBe(0);
    await press(opened.page, 'Undo');
    expect(await opened.page.getByText('Set aside').count()).toBe(1);
  });
});

test.for(['day', 'night'] as const)('everyone can use what an import offers: %s', async (look, { openPage }) => {
  const { page } = await openPage({ screen: 'settings', look, rigs: [one] });
  await bringIn(page, 'x.json', earlier);
  await page.getByText('new here').first().waitFor();
  await page.getByText('The licence', { exact: true }).click();
  expect(await violations(page)).toEqual([]);
});
