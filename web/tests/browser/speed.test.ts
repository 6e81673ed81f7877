import { describe } from 'vitest';
import type { Page } from 'playwright-core';
import { violations } from './axe';
import { aboard, sail, steer } from './boat';
import { expect, test } from './fixture';

const MPH = 0.44704;

function digits(page: Page): Promise<number> {
  return page.locator('.speed-digits .digits').evaluate((e) => Number(e.firstChild?.textContent));
}

function words(page: Page, selector: string): Promise<string> {
  return page.locator(selector).innerText();
}

/** What the page keeps in the browser's storage, written a moment after each change. */
async function hand(page: Page): Promise<{ current: { along_mps: number; across_mps: number }[]; speed_mps: number }> {
  await page.evaluate(() => dispatchEvent(new Event('pagehide')));
  return page.evaluate(() => JSON.parse(localStorage.getItem('offplumb') ?? '{}').hand);
}

const useIt = (page: Page) => page.getByRole('switch', { name: 'Use the phone’s speed' });
const leg = (page: Page, name: string) => page.getByRole('group', { name });

describe('the phone’s speed', () => {
  test('comes from places alone, where the browser gives no more', async ({ openPage }) => {
    const place = { latitude: 47.3, longitude: -123.2, accuracy: 5 };
    const { page, context } = await openPage({ screen: 'speed', permissions: ['geolocation'], geolocation: place });
    await useIt(page).click();
    // 1.3 m north each second, by the browser's own clock.
    const start = Date.now();
    await expect.poll(async () => {
      const t = (Date.now() - start) / 1000;
      await context.setGeolocation({ ...place, latitude: place.latitude + (1.3 * t) / 111_195 });
      return page.locator('.speed-digits .name').innerText();
    }, { timeout: 30_000, interval: 1000 }).toBe('Over ground');
    for (let i = 0; i < 8; i += 1) {
      await page.waitForTimeout(1000);
      const t = (Date.now() - start) / 1000;
      await context.setGeolocation({ ...place, latitude: place.latitude + (1.3 * t) / 111_195 });
    }
    expect(Math.abs(await digits(page) - 1.3 / MPH)).toBeLessThan(0.4);
    expect(await words(page, '.speed-digits')).toMatch(/course (000|00\d|35\d)° N\b[\s\S]*give or take 0\.\d mph/);
  });

  test('is told with course, age and accuracy, and drives the first screen', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page } = opened;
    await aboard(opened);
    await useIt(page).click();
    await sail(page, 20);
    expect(await digits(page)).toBeCloseTo(2.7, 0);
    expect(await words(page, '.speed-digits')).toMatch(/course 0(3|4)\d° NE\n(just now|1 s ago), give or take 0\.\d mph/);
    await page.evaluate(() => { location.hash = 'line'; });
    await page.getByRole('slider', { name: 'Speed' }).waitFor();
    expect(await words(page, '.hands')).toContain('GPS');
    expect(await page.getByRole('slider', { name: 'Speed' }).getAttribute('aria-disabled')).toBe('true');
    // Faster over ground, the ball rides higher.
    const ball = (): Promise<number> => page.getByText('Ball', { exact: true }).locator('xpath=..')
      .locator('.digits').first().evaluate((e) => Number(e.firstChild?.textContent));
    const before = await ball();
    expect(before).toBeGreaterThan(50);
    await steer(page, { speed_mps: 2 });
    await sail(page, 40);
    await expect.poll(ball).toBeLessThan(before - 10);
  });

  test('refused: says so, and the hand’s speed goes on', async ({ openPage }) => {
    const { page } = await openPage({ screen: 'speed' });
    await useIt(page).click();
    await page.locator('#phone-words', { hasText: /^Refused\./ }).waitFor();
    expect(await words(page, '.notice')).toMatch(/refused\. By hand: 2\.7 mph through the water/);
    expect(await words(page, '[data-door="location"]')).toMatch(/Not here[\s\S]*Refused for this page/);
    await page.getByRole('slider', { name: /^Speed/ }).press('ArrowRight');
    expect(await digits(page)).toBe(2.8);
    // Allowed in the browser's settings meanwhile: it starts by itself.
    await page.context().setGeolocation({ latitude: 47.3, longitude: -123.2, accuracy: 5 });
    await page.context().grantPermissions(['geolocation']);
    await page.getByText(/^Waiting for the first fix|^Fixes come|^On\./).waitFor();
  });

  test('lost: called old, then the hand’s, once in words; and back', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page } = opened;
    await aboard(opened);
    await useIt(page).click();
    await sail(page, 20);
    await steer(page, { seen: false });
    await sail(page, 9);
    expect(await words(page, '.speed-digits')).toMatch(/Over ground, OLD[\s\S]*9 s ago|10 s ago/);
    await page.evaluate(() => { location.hash = 'line'; });
    await sail(page, 1);
    expect(await words(page, '.hands')).toMatch(/GPS, \d+ s old/);
    await sail(page, 15);
    expect(await words(page, '.notice')).toMatch(/no fix for 20 s\. By hand: 2\.7 mph/);
    expect(await words(page, '.hands')).toContain('no GPS');
    await page.getByRole('button', { name: 'Close' }).click();
    await sail(page, 60);
    expect(await page.locator('.notice').count()).toBe(0);
    await steer(page, { seen: true });
    await sail(page, 3);
    expect(await words(page, '.hands')).toMatch(/GPS\s/);
    expect(await words(page, '.hands')).not.toContain('no GPS');
  });

  test('a browser without any of it: everything by hand', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page, context } = opened;
    await context.addInitScript(() => {
      Object.defineProperty(navigator, 'geolocation', { value: undefined });
      Object.defineProperty(navigator, 'wakeLock', { value: undefined });
      Object.defineProperty(navigator, 'permissions', { value: undefined });
      Object.defineProperty(navigator, 'storage', { value: undefined });
      Object.defineProperty(globalThis, 'DeviceOrientationEvent', { value: undefined });
    });
    await page.reload();
    await page.getByText('This browser gives no speed. Set it by hand below.').waitFor();
    expect(await words(page, '[data-door="location"]')).toMatch(/Not here/);
    expect(await words(page, '[data-door="tilt"]')).toMatch(/no level/);
    expect(await words(page, '[data-door="awake"]')).toMatch(/display settings/);
    expect(await leg(page, 'First leg').getByRole('button', { name: 'Start' }).isDisabled()).toBe(true);
  });
});

describe('a page opened from the disk', () => {
  test('says what it has, and works without the rest', async ({ openPage }) => {
    const { page } = await openPage({ form: 'single', screen: 'speed' });
    expect(await words(page, '[data-door="offline"]')).toMatch(/Here[\s\S]*everything in it/);
    expect(await words(page, '[data-door="location"]')).toMatch(/disk/);
    await useIt(page).click();
    await page.locator('#phone-words', { hasText: /^Refused|^No fix yet|^Waiting/ }).waitFor();
    await page.getByRole('slider', { name: /^Speed/ }).press('ArrowRight');
    expect(await digits(page)).toBe(2.8);
  });
});

describe('the current along the boat', () => {
  test('makes the speed through the water, and turns round with the boat', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page } = opened;
    await aboard(opened);
    await useIt(page).click();
    await sail(page, 20);
    const over = await digits(page);
    const dial = page.getByRole('slider', { name: 'With me' });
    for (let i = 0; i < 5; i += 1) await dial.press('ArrowLeft');
    expect(await words(page, '.dial')).toContain('0.5 mph against me');
    const through = async (): Promise<number> => Number(/([-\d.]+)\s*mph/.exec(await words(page, '.other'))?.[1]);
    expect(await through()).toBeCloseTo(over + 0.5, 0);
    await page.getByRole('button', { name: 'I turned round' }).click();
    expect(await words(page, '.dial')).toContain('0.5 mph with me');
    expect(await through()).toBeCloseTo(over - 0.5, 0);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await words(page, '.dial')).toContain('0.5 mph against me');
  });

  test('moves the whole profile', async ({ openPage }) => {
    const { page } = await openPage({ screen: 'speed', hand: { current: [
      { depth_m: 0, along_mps: 0, across_mps: 0.1 }, { depth_m: 20, along_mps: 0.3, across_mps: 0 }] } });
    await page.getByRole('slider', { name: 'With me' }).press('ArrowRight');
    const { current } = await hand(page);
    expect(current[0]?.along_mps).toBeCloseTo(0.1 * MPH);
    expect(current[1]?.along_mps).toBeCloseTo(0.3 + 0.1 * MPH);
    expect(current[0]?.across_mps).toBe(0.1);
  });
});

/** Way over ground of a boat that makes 1.2 m/s on 40 or on 220 in a current of 0.3 m/s toward 100. */
function ground(heading_deg: number): { speed_mps: number; course_deg: number } {
  const rad = Math.PI / 180;
  const north = 1.2 * Math.cos(heading_deg * rad) + 0.3 * Math.cos(100 * rad);
  const east = 1.2 * Math.sin(heading_deg * rad) + 0.3 * Math.sin(100 * rad);
  return { speed_mps: Math.hypot(north, east), course_deg: (Math.atan2(east, north) / rad + 360) % 360 };
}

describe('a two-way run', () => {
  test('finds the current, the speed and the log’s error, and puts the current in hand', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page } = opened;
    await aboard(opened, ground(40));
    await leg(page, 'First leg').getByRole('button', { name: 'Start' }).click();
    await sail(page, 5);
    expect(await words(page, '.leg.live')).toMatch(/^First leg[\s\S]*[34]\s*s/);
    expect(await words(page, '[data-door="awake"]')).toContain('The screen stays on');
    expect(await violations(page)).toEqual([]);
    await sail(page, 60);
    expect(await words(page, '.leg.live')).toContain('A minute is full');
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await words(page, '.notice')).toMatch(/First leg kept: 3\.\d mph at 05\d°/);
    await page.getByRole('button', { name: 'Close' }).click();

    await steer(page, ground(220));
    await sail(page, 15);
    await leg(page, 'Second leg').getByRole('button', { name: 'Start' }).click();
    await sail(page, 65);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.locator('.found .figures').waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    const found = await words(page, '.found .figures');
    expect(found).toMatch(/Current at the top\s+0\.7\s*mph\s+0\.\d to [01]\.\d; toward (0[89]|10|11)\d° (E|SE)/);
    expect(found).toMatch(/Through the water, both legs\s+2\.7\s*mph/);
    expect(found).not.toContain('log');

    await leg(page, 'First leg').getByLabel('Boat’s log read').fill('3.0');
    await page.getByText('The log reads high by').waitFor();
    expect(await words(page, '.found .figures')).toMatch(/The log reads high by\s+0\.3\s*mph/);
    // At the end of the page nothing lies half under the ways at the foot.
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    expect(await violations(page)).toEqual([]);

    // The phone is not used for the speed: the way of the second leg is taken.
    await page.getByRole('button', { name: 'Use this current' }).click();
    const { current } = await hand(page);
    expect(current[0]?.along_mps).toBeCloseTo(-0.15, 1);
    expect(current[0]?.across_mps).toBeCloseTo(-0.26, 1);
    expect(await words(page, '.dial')).toMatch(/0\.\d mph against me, 0\.\d mph to port/);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect((await hand(page)).current[0]).toMatchObject({ along_mps: 0, across_mps: 0 });
    await page.getByRole('button', { name: /^Set 2\.7 mph by hand/ }).click();
    expect((await hand(page)).speed_mps).toBeCloseTo(1.2, 1);
  });

  test('a leg that loses the fix says so, keeps what it has, and goes on', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page } = opened;
    await aboard(opened);
    await leg(page, 'First leg').getByRole('button', { name: 'Start' }).click();
    await sail(page, 31);
    await steer(page, { seen: false });
    await sail(page, 20);
    expect(await words(page, '.leg.live')).toMatch(/No fix for (19|20|21) s\. The leg keeps its (29|30) s/);
    await steer(page, { seen: true });
    await sail(page, 21);
    expect(await words(page, '.leg.live')).not.toContain('No fix');
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await words(page, '.leg.kept')).toMatch(/held (49|50|51) s, scatter 0\.\d mph[\s\S]*a gap of (20|21|22) s is left out/);
    // The stop was too early: it goes on.
    await page.getByRole('button', { name: 'Undo' }).click();
    await sail(page, 11);
    expect(await words(page, '.leg.live')).toMatch(/First leg\s+(59|60|61)\s*s/);
  });

  test('goes on while another screen is looked at, and its legs outlast a reload', async ({ openPage }) => {
    const opened = await openPage({ screen: 'speed' });
    const { page } = opened;
    await aboard(opened);
    await leg(page, 'First leg').getByRole('button', { name: 'Start' }).click();
    await sail(page, 10);
    await page.evaluate(() => { location.hash = 'line'; });
    await sail(page, 20);
    await page.evaluate(() => { location.hash = 'speed'; });
    await page.getByRole('button', { name: 'Stop' }).click();
    const kept = await words(page, '.kept-leg');
    expect(kept).toMatch(/held (28|29|30) s/);
    await page.reload();
    await page.locator('.kept-leg').waitFor();
    expect(await words(page, '.kept-leg')).toBe(kept);
  });

  test('with a refused phone is typed by hand; what is wrong is said', async ({ openPage }) => {
    const { page } = await openPage({ screen: 'speed', units: 'knots' });
    for (const [name, speed, course] of [['First leg', '2.6', '40'], ['Second leg', '1.8 kn', '215 deg']] as const) {
      const group = leg(page, name);
      await group.getByRole('button', { name: 'Type it' }).click();
      await group.getByRole('button', { name: 'Keep' }).click();
      await group.getByText('A leg needs its speed over ground').waitFor();
      const field = group.getByLabel('Speed over ground');
      await field.fill('fast');
      await group.getByRole('alert').first().waitFor();
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      await field.fill(speed);
      await group.getByLabel('Course over ground').fill(course);
      await page.waitForTimeout(200);
      await group.getByRole('button', { name: 'Keep' }).click();
    }
    await page.locator('.found .figures').waitFor();
    expect(await words(page, '.found .figures')).toMatch(/Through the water, both legs\s+2\.2\s*kn/);
    // A leg held too briefly is refused by the engine, in its own words; what was found stays.
    await leg(page, 'First leg').getByRole('button', { name: 'Change by hand' }).click();
    await leg(page, 'First leg').getByLabel('Held for').fill('12 s');
    await page.waitForTimeout(200);
    await leg(page, 'First leg').getByRole('button', { name: 'Keep' }).click();
    await page.locator('.found [role="alert"]').waitFor();
    expect(await words(page, '.found [role="alert"]')).toMatch(/12.*20 to 3600 s/);
    expect(await page.locator('.found .figures').count()).toBe(1);
    await page.getByRole('button', { name: 'Begin again' }).click();
    expect(await page.locator('.kept-leg').count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('.kept-leg').count()).toBe(2);
  });

  test('from places alone, as the browser’s own location gives them', { timeout: 180_000 }, async ({ openPage }) => {
    const place = { latitude: 47.3, longitude: -123.2, accuracy: 3 };
    const { page, context } = await openPage({ screen: 'speed', permissions: ['geolocation'], geolocation: place });
    let last = Date.now();
    const go = async (seconds: number, north_mps: number): Promise<void> => {
      const end = Date.now() + 1000 * seconds;
      while (Date.now() < end) {
        await page.waitForTimeout(900);
        const now = Date.now();
        place.latitude += (north_mps * (now - last)) / 1000 / 111_195;
        last = now;
        await context.setGeolocation(place);
      }
    };
    for (const [name, north_mps] of [['First leg', 1.5], ['Second leg', -0.9]] as const) {
      await leg(page, name).getByRole('button', { name: 'Start' }).click();
      last = Date.now();
      await go(25, north_mps);
      await page.getByRole('button', { name: 'Stop' }).click();
      await page.getByRole('button', { name: 'Close' }).click();
    }
    await page.locator('.found .figures').waitFor();
    // 1.2 m/s through the water, 0.3 m/s of current toward north.
    const found = await words(page, '.found .figures');
    const [current, water] = [...found.matchAll(/(\d\.\d)\s*mph/g)].map((match) => Number(match[1]) * MPH);
    expect(Math.abs((current ?? NaN) - 0.3)).toBeLessThan(0.12);
    expect(Math.abs((water ?? NaN) - 1.2)).toBeLessThan(0.12);
  });
});
