// Rigs: kept, edited, brought in and out.
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe } from 'vitest';
import { violations } from './axe';
import { expect, laptop, phone, ready, test } from './fixture';

const rigFile = (name: string): string =>
  readFileSync(new URL(`../../../examples/rigs/${name}.toml`, import.meta.url), 'utf8');
const one = rigFile('one-rigger');
const two = rigFile('two-riggers');
const ONE = 'Spindrift Sound, one rigger';
const TWO = 'Spindrift Sound, two riggers';

const names = (page: Page): Promise<string[]> =>
  page.locator('.rig-row h2').evaluateAll((rows) => rows.map((row) => row.firstChild?.textContent ?? ''));
const standing = (page: Page) => page.locator('.rig-standing');
const edit = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('button', { name: `Edit ${name}`, exact: true }).click();
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await page.getByText('Right, and kept.').waitFor();
};
const field = (page: Page, path: string) => page.locator(`input[data-path="${path}"]`);
/** The texts of the kept rigs, as they are in the browser's storage. */
const keptTexts = async (page: Page): Promise<string[]> => {
  await page.evaluate(() => dispatchEvent(new Event('pagehide')));
  return page.evaluate(() => {
    const kept = JSON.parse(localStorage.getItem('offplumb') ?? '{}') as { rigs: { toml: string }[] };
    return kept.rigs.map((rig) => rig.toml);
  });
};

describe('the list', () => {
  test('says which rig is in use, in a line of words, and changes it', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one, two], screen: 'rigs' });
    expect(await names(page)).toEqual([ONE, TWO]);
    expect(await page.locator('.rig-row').nth(1).innerText()).toMatch(/port: .*starboard: .*A made-up example/s);
    await page.getByRole('button', { name: `Use this: ${TWO}` }).click();
    expect(await page.locator('.rig-row.in-use h2').innerText()).toBe(`${TWO} in use`);
    expect(await page.getByRole('button', { name: `Use this: ${TWO}` }).count()).toBe(0);
  });

  test('deletes without a question, and undoes it', async ({ openPage }) => {
    const opened = await openPage({ rigs: [one, two], screen: 'rigs' });
    const { page } = opened;
    await page.getByRole('button', { name: `Delete ${ONE}` }).click();
    expect(await names(page)).toEqual([TWO]);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await names(page)).toEqual([ONE, TWO]);
    expect(await page.locator('.rig-row.in-use h2').innerText()).toContain(ONE);
    await page.getByRole('button', { name: `Delete ${ONE}` }).click();
    await page.getByRole('button', { name: `Delete ${TWO}` }).click();
    expect(await names(page)).toEqual([TWO]);
    expect(await page.locator('.notice').innerText()).toMatch(/only rig/);
  });

  test('makes an example one\'s own', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one], screen: 'rigs' });
    await page.getByRole('button', { name: `Make it mine: ${ONE}` }).click();
    await page.getByRole('heading', { level: 1, name: 'My boat' }).waitFor();
    await page.getByText('In use: a change counts').waitFor();
    expect(await page.getByText('made-up').count()).toBe(0);
    expect((await keptTexts(page))[1]).not.toMatch(/invented/);
  });

  test('starts a new rig from plain gear', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one], screen: 'rigs' });
    await page.getByRole('button', { name: 'New rig' }).click();
    await page.getByText('Right, and kept.').waitFor();
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('My boat');
    expect(await page.getByText('made-up').count()).toBe(0);
  });

  test('names a kept rig that cannot be read, and what is wrong with it', async ({ openPage }) => {
    const broken = one.replace('setback = "20 ft"', 'setback = "20 lb"').replace(ONE, 'Broken');
    const { page } = await openPage({ rigs: [one, broken], screen: 'rigs' });
    const row = page.locator('.rig-row').nth(1);
    expect(await row.innerText()).toMatch(/Broken.*cannot be used\. Line \d+:/s);
    expect(await row.getByRole('button', { name: /^Use / }).count()).toBe(0);
    await row.getByRole('button', { name: 'Edit Broken' }).click();
    const text = page.getByLabel('The rig file');
    await text.fill(broken.replace('20 lb', '20 ft'));
    await page.getByText('Right, and kept.').waitFor();
    await page.getByRole('button', { name: 'All rigs' }).click();
    expect(await page.locator('.rig-row').nth(1).innerText()).not.toMatch(/cannot/);
  });
});

describe('the form', () => {
  test('keeps what is right at once, and after the next start', async ({ openPage }) => {
    const opened = await openPage({ rigs: [one], screen: 'rigs' });
    await edit(opened.page, ONE);
    const setback = field(opened.page, 'riggers[0].clips[0].setback');
    expect(await setback.inputValue()).toBe('20 ft');
    await setback.fill('33');
    expect(await opened.page.locator('.rig-unit').innerText()).toBe('ft');
    await setback.blur();
    expect(await setback.inputValue()).toBe('33 ft');
    await expect.poll(async () => (await keptTexts(opened.page))[0]).toContain('setback = "33 ft"');
    const page = await opened.startAgain();
    await opened.show('rigs');
    await edit(page, ONE);
    expect(await field(page, 'riggers[0].clips[0].setback').inputValue()).toBe('33 ft');
  });

  test('marks the field that is wrong; the last good rig stays; nothing typed is lost', async ({ openPage }) => {
    const opened = await openPage({ rigs: [one], screen: 'rigs' });
    await edit(opened.page, ONE);
    const path = 'riggers[0].clips[0].leader';
    await field(opened.page, path).fill('42 lb');
    await opened.page.locator('.rig-stands.unfinished').waitFor();
    const wrong = field(opened.page, path);
    expect(await wrong.getAttribute('aria-invalid')).toBe('true');
    expect(await wrong.evaluate((input) => (input.getAttribute('aria-describedby') ?? '').split(' ')
      .map((id) => document.getElementById(id)?.textContent).join(' '))).toMatch(/lb/);
    expect(await opened.page.locator('[aria-invalid="true"]').count()).toBe(1);
    expect((await keptTexts(opened.page))[0]).toBe(one);

    const page = await opened.startAgain();
    await opened.show('rigs');
    expect(await page.locator('.rig-row').innerText()).toMatch(/unfinished/);
    await page.getByRole('button', { name: `Go on with ${ONE}` }).click();
    await page.locator('.rig-stands.unfinished').waitFor();
    expect(await field(page, path).inputValue()).toBe('42 lb');
    expect(await standing(page).innerText()).toMatch(/You left it so/);

    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByText('Right, and kept.').waitFor();
    expect(await field(page, path).inputValue()).toBe('42 in');
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.locator('.rig-stands.unfinished').waitFor();
    expect(await field(page, path).inputValue()).toBe('42 lb');
    await field(page, path).fill('43 in');
    await page.getByText('Right, and kept.').waitFor();
    expect((await keptTexts(page))[0]).toContain('leader = "43 in"');
  });

  test('leads to what is wrong on another rigger, and under a fold', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [two], screen: 'rigs', size: laptop });
    await edit(page, TWO);
    await page.getByRole('button', { name: 'starboard', exact: true }).click();
    await page.getByText('More about this rigger').click();
    await page.getByLabel('How far the line may lean').fill('95 deg');
    await page.locator('.rig-stands.unfinished').waitFor();
    await page.getByRole('button', { name: 'port', exact: true }).click();
    expect(await page.locator('[aria-invalid="true"]').count()).toBe(0);
    await page.getByRole('button', { name: 'Show it' }).click();
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-path'))).toBe('riggers[1].largest_angle');
    expect(await page.getByLabel('How far the line may lean').isVisible()).toBe(true);
  });

  test('adds and removes riggers and clips, and undoes a removal', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one], screen: 'rigs' });
    await edit(page, ONE);
    await page.getByRole('button', { name: 'Add a clip, stacked' }).click();
    await expect.poll(async () => (await keptTexts(page))[0]?.match(/\[\[riggers\.clips\]\]/g)?.length).toBe(2);
    expect(await field(page, 'riggers[0].clips[1].above_ball').inputValue()).toBe('24 ft');
    await page.getByRole('button', { name: 'Remove this clip' }).first().click();
    await expect.poll(async () => (await keptTexts(page))[0]?.match(/\[\[riggers\.clips\]\]/g)?.length).toBe(1);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(async () => (await keptTexts(page))[0]?.match(/\[\[riggers\.clips\]\]/g)?.length).toBe(2);
    await page.getByRole('button', { name: 'Add a rigger' }).click();
    await expect.poll(async () => (await keptTexts(page))[0]?.match(/\[\[riggers\]\]/g)?.length).toBe(2);
    expect(await page.getByLabel('Name of the rigger').inputValue()).toBe('starboard');
    await page.getByRole('button', { name: 'Remove this rigger' }).click();
    await expect.poll(async () => (await keptTexts(page))[0]?.match(/\[\[riggers\]\]/g)?.length).toBe(1);
  });

  test('takes figures of one\'s own, and gives the catalogue\'s thing back', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one], screen: 'rigs', size: laptop });
    await edit(page, ONE);
    const line = page.locator('select[data-path="riggers[0].line.from"]');
    await field(page, 'riggers[0].line.diameter').fill('0.84');
    await expect.poll(async () => (await keptTexts(page))[0]).toContain('line = { from = "wire-1x7", diameter = "0.84 mm" }');
    await line.selectOption('own');
    await page.locator('.rig-stands.unfinished').waitFor();
    for (const [key, value] of Object.entries({ normal_drag_coefficient: '1.2', tangential_drag_coefficient: '0.01',
      weight_in_water: '0.03', weight_in_air: '0.034 N/m' })) await field(page, `riggers[0].line.${key}`).fill(value);
    await page.getByText('Right, and kept.').waitFor();
    expect((await keptTexts(page))[0]).toMatch(/normal_drag_coefficient = 1\.2,.*weight_in_water = "0\.03 N\/m"/);
    await page.locator('select[data-path="riggers[0].line.from"]').selectOption('from:wire-1x7');
    await expect.poll(async () => (await keptTexts(page))[0]).toContain('line = { from = "wire-1x7", diameter = "0.84 mm" }');

    await page.locator('select[data-path="riggers[0].clips[0].flasher.from"]').selectOption('none');
    await expect.poll(async () => (await keptTexts(page))[0]).not.toMatch(/flasher|leader/);
    await page.locator('select[data-path="riggers[0].clips[0].flasher.from"]').selectOption('from:dodger-swaying-8in');
    await expect.poll(async () => (await keptTexts(page))[0]).toMatch(/dodger-swaying-8in.*leader = "42 in"/s);
    await field(page, 'riggers[0].ball.weight').fill('13.5 lb');
    await expect.poll(async () => (await keptTexts(page))[0]).toMatch(/ball = \{ weight = "13\.5 lb", shape = "sphere" \}/);
  });

  test('draws the last good rig to scale beside it', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one], screen: 'rigs', size: laptop });
    await edit(page, ONE);
    const ball = page.locator('.rig-drawing .selected .ball');
    await ball.waitFor();
    const y = async (): Promise<number> => Number(await ball.getAttribute('cy'));
    const words = page.locator('.rig-drawing .dimension-text');
    await expect.poll(() => words.allTextContents()).toContainEqual(expect.stringMatching(/^\d+ ft$/));
    const before = [await y(), await words.allTextContents()];
    await field(page, 'riggers[0].line.diameter').fill('1.6 mm');
    await page.getByText('Right, and kept.').waitFor();
    await expect.poll(async () => [await y(), await words.allTextContents()]).not.toEqual(before);
  });

  test('the browser\'s back button leads to the list, to the rig it came from', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one, two], screen: 'rigs' });
    await edit(page, TWO);
    await page.goBack();
    await page.getByRole('heading', { level: 1, name: 'Rigs' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain(TWO);
    await page.goForward();
    await page.getByRole('heading', { level: 1, name: TWO }).waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1, name: TWO }).waitFor();
  });
});

describe('as text', () => {
  test('says the line of a slip, leads to it, keeps it over a restart', async ({ openPage }) => {
    const opened = await openPage({ rigs: [one], screen: 'rigs' });
    await edit(opened.page, ONE);
    await opened.page.getByRole('button', { name: 'As text' }).click();
    const text = opened.page.getByLabel('The rig file');
    expect(await text.inputValue()).toBe(one);
    const slip = one.replace('setback = "20 ft"', 'setback = "20"');
    const line = slip.split('\n').findIndex((words) => words.includes('setback = "20"')) + 1;
    await text.fill(slip);
    await opened.page.getByRole('button', { name: `Show line ${line}` }).click();
    expect(await text.evaluate((area: HTMLTextAreaElement) =>
      area.value.slice(area.selectionStart, area.selectionEnd))).toContain('setback = "20"');
    expect(await opened.page.getByRole('button', { name: 'Form', exact: true }).isDisabled()).toBe(true);
    expect((await keptTexts(opened.page))[0]).toBe(one);

    const page = await opened.startAgain();
    await opened.show('rigs');
    await page.getByRole('button', { name: `Go on with ${ONE}` }).click();
    expect(await page.getByLabel('The rig file').inputValue()).toBe(slip);
    await page.getByLabel('The rig file').fill(slip.replace('"20"', '"21 ft"  # wet'));
    await page.getByText('Right, and kept.').waitFor();
    expect((await keptTexts(page))[0]).toContain('setback = "21 ft"  # wet');
    await page.getByRole('button', { name: 'Form', exact: true }).click();
    expect(await field(page, 'riggers[0].clips[0].setback').inputValue()).toBe('21 ft');
  });
});

test('the page open twice: what one window keeps, the other does not undo', async ({ openPage }) => {
  const { page, context, address } = await openPage({ rigs: [one], screen: 'rigs' });
  const other = await context.newPage();
  await other.goto(`${address}#line`);
  await ready(other);
  await page.bringToFront();
  await page.getByRole('button', { name: 'New rig' }).click();
  await page.getByText('Right, and kept.').waitFor();
  const afterOne = await keptTexts(page);
  expect(afterOne).toHaveLength(2);
  await other.bringToFront();
  // Anything that the other window keeps: its own count.
  await other.getByRole('slider', { name: 'Count' }).press('ArrowUp');
  expect(await keptTexts(other)).toEqual(afterOne);
  await other.evaluate(() => { location.hash = 'rigs'; });
  await expect.poll(() => names(other)).toEqual([ONE, 'My boat']);
});

describe.each(['static', 'single'] as const)('files, in the %s form', (form) => {
  const file = (name: string, text: string) => ({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });

  test('come in several at once; a wrong one is refused beside its name', async ({ openPage }) => {
    const { page } = await openPage({ form, rigs: [one], screen: 'rigs' });
    const wrong = two.replace('setback = "15 ft"', 'setback = "15 lb"');
    const line = wrong.split('\n').findIndex((words) => words.includes('15 lb')) + 1;
    await page.locator('input[data-import="files"]').setInputFiles([
      file('two.toml', two), file('wrong.toml', wrong), file('photo.jpg', '\u0000'), file('one.toml', one)]);
    const results = page.locator('.rig-results li');
    await results.nth(3).waitFor();
    expect(await names(page)).toEqual([ONE, TWO]);
    expect(await results.allInnerTexts()).toEqual([
      expect.stringContaining(`two.toml: kept as "${TWO}"`),
      expect.stringMatching(new RegExp(`wrong\\.toml: not taken\\. Line ${line}: .*lb`)),
      expect.stringContaining('photo.jpg: not taken.'),
      expect.stringContaining('one.toml: here already')]);
  });

  test('with a taken name get a free one, or replace', async ({ openPage }) => {
    const { page } = await openPage({ form, rigs: [one], screen: 'rigs' });
    const newer = one.replace('setback = "20 ft"', 'setback = "24 ft"');
    await page.locator('input[data-import="files"]').setInputFiles([file('one.toml', newer)]);
    await page.locator('.rig-results li').waitFor();
    expect(await names(page)).toEqual([ONE, `${ONE} (2)`]);
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: `Put it in the place of "${ONE}"` }).click();
    await expect.poll(() => names(page)).toEqual([ONE]);
    expect(await keptTexts(page)).toEqual([newer]);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => names(page)).toEqual([ONE, `${ONE} (2)`]);
  });

  test('and what is edited is kept', async ({ openPage }) => {
    const { page } = await openPage({ form, rigs: [one], screen: 'rigs' });
    await edit(page, ONE);
    await field(page, 'riggers[0].ball.weight').fill('14 lb');
    await expect.poll(async () => (await keptTexts(page))[0]).toContain('weight = "14 lb"');
    await page.goBack();
    await page.getByText('14 lb lead ball').waitFor();
  });

  test('go out as they are kept', async ({ openPage }) => {
    const { page } = await openPage({ form, rigs: [one], screen: 'rigs' });
    const [saved] = await Promise.all([page.waitForEvent('download'),
      page.getByRole('button', { name: `Export ${ONE}` }).click()]);
    expect(saved.suggestedFilename()).toBe(`${ONE}.toml`);
    expect(await readFile(await saved.path(), 'utf8')).toBe(one);
  });

  test('or as a text that is pasted; a wrong one stays in the field', async ({ openPage }) => {
    const { page } = await openPage({ form, rigs: [one], screen: 'rigs' });
    await page.getByText('Paste a rig\'s text').click();
    const paste = page.getByLabel('The text of one rig file');
    await paste.fill('name = "x');
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await page.getByText('not taken.').waitFor();
    expect(await paste.inputValue()).toBe('name = "x');
    await paste.fill(two);
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await expect.poll(() => names(page)).toEqual([ONE, TWO]);
    expect(await paste.inputValue()).toBe('');
  });
});

describe('everyone', () => {
  test.for([['day', phone], ['night', phone], ['day', laptop], ['night', laptop]] as const)(
    'can use the form and the text: %s', async ([look, size], { openPage }) => {
      const { page } = await openPage({ rigs: [two], screen: 'rigs', look, size });
      await edit(page, TWO);
      for (const fold of await page.locator('.rig-fold > summary').all()) await fold.click();
      expect(await violations(page)).toEqual([]);
      await field(page, 'riggers[0].clips[0].setback').fill('x');
      await page.locator('.rig-stands.unfinished').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Leave it' }).click();
      await page.getByText('Right, and kept.').waitFor();
      await page.getByRole('button', { name: 'As text' }).click();
      expect(await violations(page)).toEqual([]);
    });

  test('also at 200 %, with nothing sticking out and every target large enough', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [two], screen: 'rigs', size: { width: 320, height: 640 } });
    const over = (): Promise<number> => page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(await over()).toBeLessThanOrEqual(0);
    await edit(page, TWO);
    for (const fold of await page.locator('.rig-fold > summary').all()) await fold.click();
    expect(await over()).toBeLessThanOrEqual(0);
    const low = await page.locator('main button, main input:not([type="checkbox"]), main select, main summary')
      .evaluateAll((all) => all.filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().height < 55.5)
        .map((one) => one.outerHTML.slice(0, 80)));
    expect(low).toEqual([]);
  });

  test('with keys alone: from the list into a field and back', async ({ openPage }) => {
    const { page } = await openPage({ rigs: [one], screen: 'rigs', size: laptop });
    await page.getByRole('button', { name: `Edit ${ONE}` }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('Right, and kept.').waitFor();
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
    await field(page, 'name').focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('Skiff');
    await page.getByRole('heading', { level: 1, name: 'Skiff' }).waitFor();
    await page.getByRole('button', { name: 'All rigs' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Rigs' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Skiff');
  });
});
