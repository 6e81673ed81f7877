// Pictures of every screen, and of the first with its tools open, day and night, at three sizes, for docs/images/page.
//
//   node tools/screenshots.mjs ADDRESS FOLDER [SCREEN ...]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { chromiumOptions } from './chromium.mjs';

const SIZES = { phone: [360, 740], tablet: [820, 1180], laptop: [1440, 900] };
const SCREENS = ['line', 'let-out', 'speed', 'card', 'compare', 'rigs', 'settings', 'more'];

/** What is opened by a tap on the first screen: a picture each, by the name of its button. */
const TOOLS = { 'line-bottom': ['Bottom', 'Draw the bottom'], 'line-current': ['Current'] };

const [address, folder, ...chosen] = process.argv.slice(2);
if (!address || !folder) {
  console.error('Say the address of the page and a folder: node tools/screenshots.mjs http://127.0.0.1:8470/ pictures');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });

async function shoot(browser, sizeName, look) {
  const [width, height] = SIZES[sizeName];
  const touch = sizeName !== 'laptop';
  const context = await browser.newContext({
    viewport: { width, height }, hasTouch: touch, isMobile: touch, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const stored = { format: 'offplumb-page', version: 1, rigs: [], activeRig: '', settings: { look } };
  await page.addInitScript((text) => localStorage.setItem('offplumb', text), JSON.stringify(stored));
  await page.goto(address);
  await page.locator('html[data-engine="ready"]').waitFor({ state: 'attached' });
  for (const name of chosen.length ? chosen : [...SCREENS, ...Object.keys(TOOLS)]) {
    const taps = TOOLS[name] ?? [];
    await page.evaluate((to) => { location.hash = to; }, taps.length ? 'line' : name);
    for (const button of taps) await page.getByRole('button', { name: button, exact: true }).click();
    await page.waitForTimeout(700);
    await page.locator('[aria-busy="true"]').waitFor({ state: 'detached', timeout: 60_000 });
    await page.evaluate(() => window.scrollTo(0, 0));
    await page.screenshot({ path: join(folder, `${name}-${sizeName}-${look}.png`) });
  }
  await context.close();
}

const browser = await chromium.launch(chromiumOptions());
for (const sizeName of Object.keys(SIZES)) {
  for (const look of ['day', 'night']) {
    console.log(`${sizeName}, ${look}`);
    await shoot(browser, sizeName, look);
  }
}
await browser.close();
