import { describe } from 'vitest';
import { expect, laptop, phone, screens, test } from './fixture';

const forms = ['static', 'single'] as const;

describe.each(forms)('the %s form', (form) => {
  test.for([['a phone', phone], ['a laptop', laptop]] as const)(
    'opens each screen without a fault on %s', async ([, size], { openPage }) => {
      const opened = await openPage({ form, size });
      expect(await opened.page.title()).toContain('Offplumb');
      for (const screen of screens) {
        await opened.show(screen);
        const words = await opened.page.locator('main').innerText();
        expect(words.trim(), `#${screen}`).not.toBe('');
        expect(words, `#${screen}`).not.toContain('did not load');
      }
    });

  test('is never wider than the phone', async ({ openPage }) => {
    const opened = await openPage({ form });
    for (const screen of screens) {
      await opened.show(screen);
      const over = await opened.page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(over, `#${screen}: px that stick out`).toBeLessThanOrEqual(0);
    }
  });

  test('runs no script and no text that is not its own', async ({ openPage }) => {
    const { page, faults } = await openPage({ form });
    faults.allow(/Content Security Policy|Content-Security-Policy|EvalError/);
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script');
      script.textContent = 'document.documentElement.dataset.foreign = "ran"';
      document.head.append(script);
      // Later, since what the test itself asks the browser to run is exempt.
      const text = await new Promise<string>((done) => setTimeout(() => {
        try {
          done(String(new Function('return "ran"')()));
        } catch {
          done('refused');
        }
      }));
      return { script: document.documentElement.dataset['foreign'], text };
    });
    expect(ran).toEqual({ script: undefined, text: 'refused' });
  });

  test('reaches no other host', async ({ openPage }) => {
    const { page, faults } = await openPage({ form });
    const answered = await page.evaluate(
      () => fetch('http://elsewhere.invalid/').then(() => 'answered', () => 'refused'));
    expect(answered).toBe('refused');
    // The page's own rules stop it before it leaves.
    expect(faults.list().join()).toMatch(/Content Security Policy/);
    faults.allow(/elsewhere\.invalid|Content Security Policy/);
  });
});

test('a fault on the page is found', async ({ openPage }) => {
  const { page, faults } = await openPage();
  expect(faults.list()).toEqual([]);
  await page.evaluate(() => {
    console.error('written on purpose');
    setTimeout(() => { throw new Error('thrown on purpose'); });
  });
  await page.evaluate(() => new Promise((done) => setTimeout(done, 50)));
  expect(faults.list().join()).toMatch(/written on purpose.*thrown on purpose/);
  faults.allow(/on purpose/);
});
