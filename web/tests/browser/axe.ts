// What a machine can say of how well everyone can use a screen: WCAG 2.2, levels A and AA.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const source = readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];

/** Brings axe in past the page's own rules, which refuse foreign scripts. */
async function bringIn(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: await source });
  await session.detach();
}

async function run(page: Page, options: RunOptions): Promise<AxeResults> {
  const results = await page.evaluate(
    (wanted) => (globalThis as unknown as { axe: { run(o: RunOptions): Promise<AxeResults> } })
      .axe.run(wanted), options);
  if (results.passes.length === 0) throw new Error('axe looked at nothing');
  return results;
}

/**
 * Whether a finger finds its target is looked at with the whole screen in view: what the bar at the
 * foot covers now, comes free when one scrolls.
 */
async function runOnTargets(page: Page): Promise<AxeResults> {
  const size = page.viewportSize();
  if (!size) throw new Error('the page has no size');
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width: size.width, height: whole + size.height });
  const results = await run(page, { runOnly: { type: 'rule', values: ['target-size'] } });
  await page.setViewportSize(size);
  return results;
}

/** One line a violation: rule, where, why. */
export async function violations(page: Page): Promise<string[]> {
  await bringIn(page);
  const here = await run(page, {
    runOnly: { type: 'tag', values: levels }, rules: { 'target-size': { enabled: false } } });
  const targets = await runOnTargets(page);
  return [...here.violations, ...targets.violations].flatMap((violation) => violation.nodes.map((node) =>
    `${violation.id} at ${node.target.join(' ')}: ${node.failureSummary?.replace(/\s+/g, ' ')}`));
}
