// A boat that the browser's phone is aboard: a page-level stand-in for the receiver, since the
// browser driver sets places only, not speed and heading, and no faster than time goes.
import type { Page } from 'playwright-core';
import { ready } from './fixture';
import type { Opened } from './opening';

export interface Boat {
  /** Over ground. */
  speed_mps: number;
  course_deg: number;
  /** Fixes come. */
  seen: boolean;
  /** The receiver measures speed and heading itself. */
  own: boolean;
  refused: boolean;
}

const trolling: Boat = { speed_mps: 1.2, course_deg: 40, seen: true, own: true, refused: false };

/** Puts the phone aboard and loads the page again, with a clock that `sail` winds on. */
export async function aboard({ page, context }: Opened, boat: Partial<Boat> = {}): Promise<void> {
  await page.clock.install({ time: new Date('2026-05-01T09:00:00Z') });
  await context.addInitScript(putAboard, { ...trolling, ...boat });
  await page.reload();
  await ready(page);
}

/** Changes the boat's way. */
export async function steer(page: Page, change: Partial<Boat>): Promise<void> {
  await page.evaluate((c) => {
    Object.assign((globalThis as unknown as { boat: Boat }).boat, c);
  }, change);
}

/** Time passes on the boat, and the page has drawn it. */
export async function sail(page: Page, seconds: number): Promise<void> {
  await page.clock.runFor(1000 * seconds);
  await page.evaluate(() => Promise.resolve());
}

/** Runs within the page, before its own code. Waves sway the readings; the same at every run. */
function putAboard(boat: Boat): void {
  (globalThis as unknown as { boat: Boat }).boat = boat;
  const watches = new Map<number, PositionCallback>();
  let [latitude, longitude, count, last] = [47.3, -123.2, 0, 0];
  const rad = Math.PI / 180;
  Object.defineProperty(navigator, 'geolocation', { value: {
    watchPosition(take: PositionCallback, fail: PositionErrorCallback): number {
      last += 1;
      watches.set(last, take);
      if (boat.refused) {
        watches.delete(last);
        setTimeout(() => fail({ code: 1, message: '' } as GeolocationPositionError), 1);
      }
      return last;
    },
    clearWatch: (id: number): void => { watches.delete(id); },
  } });
  setInterval(() => {
    count += 1;
    const speed = boat.speed_mps + 0.08 * Math.sin(1.7 * count);
    const heading = (boat.course_deg + 4 * Math.sin(1.1 * count) + 360) % 360;
    latitude += (speed * Math.cos(heading * rad)) / 111_195;
    longitude += (speed * Math.sin(heading * rad)) / 111_195 / Math.cos(47.3 * rad);
    if (!boat.seen) return;
    for (const take of [...watches.values()]) {
      take({ timestamp: Date.now(), coords: { latitude, longitude, accuracy: 5,
        speed: boat.own ? speed : null, heading: boat.own ? heading : null } } as GeolocationPosition);
    }
  }, 1000);
}
