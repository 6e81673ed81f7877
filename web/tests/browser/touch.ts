// A finger on the glass.
import type { Locator, Page } from 'playwright-core';

export interface Spot {
  x: number;
  y: number;
}

/** The middle of something that is seen. */
export async function middleOf(target: Locator): Promise<Spot> {
  const box = await target.boundingBox();
  if (!box) throw new Error('nothing to touch');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Puts a finger down, moves it and lifts it. */
export async function dragFrom(page: Page, from: Spot, right_px: number, down_px: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: Spot[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints });
  await touch('touchStart', [from]);
  for (let i = 1; i <= 5; i += 1) {
    await touch('touchMove', [{ x: from.x + (right_px * i) / 5, y: from.y + (down_px * i) / 5 }]);
  }
  await touch('touchEnd', []);
  await session.detach();
}

/** Puts a finger on the middle of something, moves it sideways and lifts it. */
export async function drag(page: Page, target: Locator, right_px: number): Promise<void> {
  await dragFrom(page, await middleOf(target), right_px, 0);
}
