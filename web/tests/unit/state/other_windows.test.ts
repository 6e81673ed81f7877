import { expect, test, vi } from 'vitest';
import { adopt } from '../../../src/state/other_windows';
import { exampleRig, realApp } from '../real_app';

// The engine in the browser's worker; here it is in this process.
vi.mock('../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

const one = exampleRig('one-rigger');
const two = exampleRig('two-riggers');

test('rigs and settings of another window are taken over, counts are not', async () => {
  const { app, names } = await realApp([one]);
  const { rigs, hand, settings } = app.state.get();
  const kept = rigs[0];
  await adopt(app, { rigs: [{ id: 'new', toml: two }, { id: kept?.id ?? '', toml: one }], activeRig: 'new',
    hand: { speed_mps: 9 }, settings: { look: 'night' } });
  expect(names()).toEqual(['Spindrift Sound, two riggers', 'Spindrift Sound, one rigger']);
  expect(app.state.get().rigs[1]).toBe(kept);
  expect(app.activeRig()).toBe(kept);
  expect(app.state.get().settings).toEqual({ ...settings, look: 'night' });
  expect(app.state.get().hand.speed_mps).toBe(hand.speed_mps);
});

test('where all is the same nothing changes, so nothing is written', async () => {
  const { app } = await realApp([one]);
  const before = app.state.get();
  await adopt(app, { rigs: before.rigs, activeRig: '', hand: {}, settings: before.settings });
  expect(app.state.get()).toBe(before);
});
