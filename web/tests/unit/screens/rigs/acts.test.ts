import { describe, expect, test, vi } from 'vitest';
import { deleteRig, duplicate, makeMine, newRig } from '../../../../src/screens/rigs/acts';
import { importAll, replaceOld, type Imported } from '../../../../src/screens/rigs/imports';
import type { GoodRig } from '../../../../src/state/app';
import { Drafts } from '../../../../src/state/drafts';
import { exampleRig, realApp } from '../../real_app';
import { MemoryShelf } from '../../state/memory_shelf';

// The engine in the browser's worker; here it is in this process.
vi.mock('../../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

const one = exampleRig('one-rigger');
const two = exampleRig('two-riggers');
const ONE = 'Spindrift Sound, one rigger';
const TWO = 'Spindrift Sound, two riggers';

describe('a new rig', () => {
  test.each(['feet', 'knots', 'metric'] as const)('is a good one of plain gear, in %s', async (units) => {
    const { app, names } = await realApp([one]);
    app.changeSettings({ units });
    const id = await newRig(app);
    const rig = app.state.get().rigs.find((other) => other.id === id);
    expect(names()).toEqual([ONE, 'My boat']);
    expect(rig?.facts).toMatchObject({ invented: false, riggers: [{ name: 'port' }] });
    expect(rig?.facts?.riggers[0]?.clips).toHaveLength(1);
    expect(rig?.toml).toMatch(units === 'metric' ? / m"/ : / ft"/);
    await newRig(app);
    expect(names()[2]).toBe('My boat (2)');
  });
});

test('a copy stands behind its rig, keeps remarks, and can be undone', async () => {
  const { app, names, undo } = await realApp([one, two]);
  await duplicate(app, app.state.get().rigs[0] as GoodRig);
  expect(names()).toEqual([ONE, `${ONE} (2)`, TWO]);
  expect(app.state.get().rigs[1]?.toml).toBe(one.replace(`"${ONE}"`, `"${ONE} (2)"`));
  undo();
  expect(names()).toEqual([ONE, TWO]);
});

test('an example made mine is no example, and in use', async () => {
  const { app, names, undo } = await realApp([one, two]);
  const before = app.state.get().activeRig;
  const id = await makeMine(app, app.state.get().rigs[1] as GoodRig);
  expect(names()).toEqual([ONE, TWO, 'My boat']);
  expect(app.activeRig()).toMatchObject({ id, facts: { invented: false } });
  expect(app.activeRig()?.toml).not.toMatch(/invented/);
  expect(app.activeRig()?.facts.riggers).toEqual(app.state.get().rigs[1]?.facts?.riggers);
  undo();
  expect(names()).toEqual([ONE, TWO]);
  expect(app.state.get().activeRig).toBe(before);
});

describe('deleting', () => {
  test('can be undone: the rig is back in its place, in use, with what was unfinished', async () => {
    const { app, names, undo } = await realApp([one, two]);
    const drafts = new Drafts(new MemoryShelf());
    const rig = app.state.get().rigs[0];
    if (!rig) throw new Error();
    drafts.put({ rig: rig.id, touched: 't', kind: 'text', text: 'half' }, () => undefined);
    app.changeHand({ counts_m: { port: 17 }, balls_kg: { port: 7 } });
    deleteRig(app, drafts, rig);
    app.changeHand({ counts_m: { port: 3, starboard: 4 } });
    expect(names()).toEqual([TWO]);
    expect(app.activeRig()?.facts.name).toBe(TWO);
    expect(drafts.of(rig.id)).toBeUndefined();
    undo();
    expect(names()).toEqual([ONE, TWO]);
    expect(app.state.get().activeRig).toBe(rig.id);
    expect(drafts.of(rig.id)).toMatchObject({ text: 'half' });
    expect(app.state.get().hand).toMatchObject({ counts_m: { port: 17 }, balls_kg: { port: 7 } });
  });
  test('the last rig that can be used is not, and it is said why', async () => {
    const { app, said } = await realApp([one, 'nonsense']);
    const drafts = new Drafts(new MemoryShelf());
    for (const rig of app.state.get().rigs) deleteRig(app, drafts, rig);
    expect(app.state.get().rigs.map((rig) => rig.facts?.name)).toEqual([ONE]);
    expect(said[0]).toMatch(/only rig/);
  });
});

describe('importing', () => {
  const kept = (one: Imported | undefined): Imported & { fate: 'kept' } => {
    if (one?.fate !== 'kept') throw new Error(`not kept: ${JSON.stringify(one)}`);
    return one;
  };
  test('takes the good, refuses the wrong with line and remedy, changes nothing else', async () => {
    const { app, names, undo } = await realApp([one]);
    const wrong = two.replace('setback = "15 ft"', 'setback = "15 lb"');
    const results = await importAll(app, [
      { name: 'two.toml', text: two }, { name: 'wrong.toml', text: wrong }, { name: 'photo.jpg', trouble: 'It is no text.' },
      { name: 'all.json', text: '{"format": "offplumb-page", "version": 1}' }, { name: 'one.toml', text: one }]);
    expect(results.map(({ file, fate }) => [file, fate])).toEqual([
      ['two.toml', 'kept'], ['wrong.toml', 'refused'], ['photo.jpg', 'refused'], ['all.json', 'refused'], ['one.toml', 'same']]);
    const refused = results[1];
    const line = wrong.split('\n').findIndex((text) => text.includes('15 lb')) + 1;
    expect(refused).toMatchObject({ line });
    expect(refused?.fate === 'refused' && refused.words).toMatch(/lb/);
    expect(results[3]).toMatchObject({ words: expect.stringMatching(/Settings/) as string });
    expect(names()).toEqual([ONE, TWO]);
    expect(app.state.get().rigs[1]?.toml).toBe(two);
    undo();
    expect(names()).toEqual([ONE]);
  });
  test('gives a free name, or replaces, and that can be undone', async () => {
    const { app, names, undo } = await realApp([one, two]);
    const before = app.state.get().rigs;
    const newer = one.replace('setback = "20 ft"', 'setback = "24 ft"');
    const [result] = await importAll(app, [{ name: 'one.toml', text: newer }]);
    expect(result).toMatchObject({ name: `${ONE} (2)`, instead: { id: before[0]?.id, name: ONE } });
    expect(names()).toEqual([ONE, TWO, `${ONE} (2)`]);
    const after = await replaceOld(app, kept(result));
    expect(after).toMatchObject({ name: ONE, instead: undefined });
    expect(names()).toEqual([TWO, ONE]);
    expect(app.activeRig()?.toml).toBe(newer);
    undo();
    expect(names()).toEqual([ONE, TWO, `${ONE} (2)`]);
    expect(app.activeRig()?.toml).toBe(one);
  });
  test('two files of one name do not take each other\'s', async () => {
    const { app, names } = await realApp([one]);
    await importAll(app, [{ name: 'a', text: two }, { name: 'b', text: `${two}\n# other\n` }]);
    expect(names()).toEqual([ONE, TWO, `${TWO} (2)`]);
  });
  test('a rig without a name is called by its file', async () => {
    const { app, names } = await realApp([one]);
    await importAll(app, [{ name: 'Green skiff.toml', text: two.replace(/^name = .*\n/m, '') }]);
    expect(names()).toEqual([ONE, 'Green skiff']);
    expect(app.state.get().rigs[1]?.toml).toContain('# delete this line in your copy');
  });
});
