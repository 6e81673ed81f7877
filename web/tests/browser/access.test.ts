import { violations } from './axe';
import { expect, laptop, phone, screens, test } from './fixture';

const sizes = [['phone', phone], ['laptop', laptop]] as const;
const cases = (['day', 'night'] as const).flatMap((look) =>
  sizes.map(([name, size]) => ({ look, name, size })));

test.for(cases)('each screen can be used by everyone: $look, $name', async ({ look, size }, { openPage }) => {
  const opened = await openPage({ look, size });
  await expect.poll(() => opened.page.locator('html').getAttribute('data-look')).toBe(look);
  const found: string[] = [];
  for (const screen of screens) {
    await opened.show(screen);
    found.push(...(await violations(opened.page)).map((line) => `#${screen} ${line}`));
  }
  expect(found).toEqual([]);
});

test('axe finds what is wrong', async ({ openPage }) => {
  const { page } = await openPage();
  await page.evaluate(() => document.querySelector('main')?.append(document.createElement('button')));
  expect((await violations(page)).join()).toMatch(/button-name/);
  await page.evaluate(() => {
    for (const left of [0, 12]) {
      const small = document.createElement('button');
      small.textContent = 'x';
      small.style.cssText = `position: absolute; left: ${left}px; top: 0; width: 10px; height: 10px;
        min-width: 0; min-height: 0; padding: 0; z-index: 9`;
      document.querySelector('main')?.append(small);
    }
  });
  expect((await violations(page)).join()).toMatch(/target-size/);
});
