// A finger on the glass.
import type { Locator, Page } from 'playwright-core';

/** Puts a finger on the middle of something, moves it sideways and lifts it. */
export async function drag(page: Page, target: Locator, right_px: number): Promise<void> {
  const box = await target.boundingBox();
  if (!box) throw new Error('nothing to drag');
  const y = box.y + box.height / 2;
  const x = box.x + box.width / 2;
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [{ x: at, y }] });
  await touch('touchStart', x);
  for (let i = 1; i <= 5; i += 1) await touch('touchMove', x + (right_px * i) / 5);
  await touch('touchEnd');
  await session.detach();
}
