// The test function of all browser tests:
//
//   test('what is seen', async ({ openPage }) => {
//     const { page, show } = await openPage({ look: 'night', screen: 'card' });
//     ...
//   });
//
// Every page opened is closed at the end, and any console error, thrown error, failed request or
// request to another host on it fails the test.
import { test as base } from 'vitest';
import { open, type Opened, type Opening } from './opening';

interface Fixtures {
  openPage(opening?: Opening): Promise<Opened>;
}

/** Does all of them, last first, and fails with the first fault when all are done. */
async function undoAll(undos: (() => Promise<void>)[]): Promise<void> {
  const faults: unknown[] = [];
  for (const undo of undos.reverse()) await undo().catch((fault: unknown) => faults.push(fault));
  if (faults.length > 0) throw faults[0];
}

export const test = base.extend<Fixtures>({
  // vitest reads the names in the braces.
  // eslint-disable-next-line no-empty-pattern
  openPage: async ({}, use) => {
    const undos: (() => Promise<void>)[] = [];
    await use((opening = {}) => open(opening, (undo) => undos.push(undo)));
    await undoAll(undos);
  },
});

export { expect } from 'vitest';
export { laptop, phone, ready, screens } from './opening';
