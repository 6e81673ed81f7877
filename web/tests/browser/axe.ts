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

/** One line a violation: rule, where, why. */
export async function violations(page: Page): Promise<string[]> {
  await bringIn(page);
  const options: RunOptions = { runOnly: { type: 'tag', values: levels } };
  const results = await page.evaluate(
    (wanted) => (globalThis as unknown as { axe: { run(o: RunOptions): Promise<AxeResults> } })
      .axe.run(wanted), options);
  if (results.passes.length === 0) throw new Error('axe looked at nothing');
  return results.violations.flatMap((violation) => violation.nodes.map((node) =>
    `${violation.id} at ${node.target.join(' ')}: ${node.failureSummary?.replace(/\s+/g, ' ')}`));
}
