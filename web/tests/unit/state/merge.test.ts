import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { Drafts, type Draft } from '../../../src/state/drafts';
import { applyMerge, planMerge } from '../../../src/state/merge';
import { parseStored, type Everything } from '../../../src/state/storage';
import { exampleRig, realApp } from '../real_app';
import { MemoryShelf } from './memory_shelf';

// The engine in the browser's worker; here it is in this process.
vi.mock('../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

const one = exampleRig('one-rigger');
const two = exampleRig('two-riggers');
const changed = one.replace('"12lb', '"15lb').replace('ball-sphere-12lb', 'ball-sphere-15lb');
const draft = (rig: string, text: string): Draft => ({ rig, touched: 't', kind: 'text', text });

function file(rigs: { id: string; toml: string }[], more: Partial<Everything> = {}): Everything {
  return { rigs, activeRig: '', hand: {}, settings: {}, drafts: [], ...more };
}

describe('a file of everything', () => {
  test('brings in what is new, leaves what is here, renames what has a taken name', async () => {
    const { app, names } = await realApp([one]);
    const here = app.state.get().rigs[0];
    const drafts = new Drafts(new MemoryShelf());
    const coming = file([
      { id: 'x', toml: one }, { id: here?.id ?? '', toml: changed }, { id: 'y', toml: two }, { id: 'z', toml: 'nonsense' }]);
    const plan = await planMerge(app, coming, []);
    expect(names()).toEqual(['Spindrift Sound, one rigger']);
    expect(plan.coming.map(({ name, as, fate }) => [name, as, fate])).toEqual([
      ['Spindrift Sound, one rigger', 'Spindrift Sound, one rigger', 'same'],
      ['Spindrift Sound, one rigger', 'Spindrift Sound, one rigger (2)', 'renamed'],
      ['Spindrift Sound, two riggers', 'Spindrift Sound, two riggers', 'new'],
      ['A rig without a name', 'A rig without a name', 'new']]);
    applyMerge(app, drafts, plan, coming, false);
    const { rigs } = app.state.get();
    expect(names()).toEqual([
      'Spindrift Sound, one rigger', 'Spindrift Sound, one rigger (2)', 'Spindrift Sound, two riggers', '?']);
    expect(rigs[0]).toBe(here);
    expect(new Set(rigs.map((rig) => rig.id)).size).toBe(4);
    expect(rigs[1]?.facts?.riggers[0]?.ball.mass_kg).toBeCloseTo(15 * 0.45359237, 6);
    expect(rigs[3]).toMatchObject({ id: 'z', toml: 'nonsense', facts: null });
  });
  test('brought in twice changes nothing the second time', async () => {
    const { app, names } = await realApp([one]);
    const drafts = new Drafts(new MemoryShelf());
    const coming = file([{ id: 'a', toml: one }, { id: 'b', toml: two }], { drafts: [draft('b', 'half')] });
    applyMerge(app, drafts, await planMerge(app, coming, drafts.list.get()), coming, true);
    const before = [app.state.get().rigs, drafts.list.get()];
    applyMerge(app, drafts, await planMerge(app, coming, drafts.list.get()), coming, false);
    expect([app.state.get().rigs, drafts.list.get()]).toEqual(before);
    expect(names()).toHaveLength(2);
  });
  test('keeps what is unfinished on both sides', async () => {
    const { app, names } = await realApp([one]);
    const id = app.state.get().rigs[0]?.id ?? '';
    const drafts = new Drafts(new MemoryShelf());
    drafts.put(draft(id, 'mine'), () => undefined);
    const coming = file([{ id: 'a', toml: one }], { drafts: [draft('a', 'theirs')] });
    applyMerge(app, drafts, await planMerge(app, coming, drafts.list.get()), coming, false);
    expect(names()).toEqual(['Spindrift Sound, one rigger', 'Spindrift Sound, one rigger (2)']);
    expect(drafts.of(id)).toMatchObject({ text: 'mine' });
    expect(drafts.of(app.state.get().rigs[1]?.id ?? '')).toMatchObject({ text: 'theirs' });
  });
  test('takes settings and hand only when asked to, and all is undone', async () => {
    const kept = readFileSync(new URL('../kept/version-1-everything.json', import.meta.url), 'utf8');
    const { everything } = parseStored(kept);
    const { app, names } = await realApp([one, two]);
    const drafts = new Drafts(new MemoryShelf());
    const before = app.state.get();
    const only = applyMerge(app, drafts, await planMerge(app, everything, []), everything, false);
    expect(names()).toEqual(['Spindrift Sound, one rigger', 'Spindrift Sound, two riggers', 'Own boat', '?']);
    expect(app.state.get().settings).toEqual(before.settings);
    expect(app.state.get().activeRig).toBe(before.activeRig);
    expect(drafts.list.get()).toHaveLength(2);
    only();
    expect(app.state.get().rigs).toEqual(before.rigs);
    expect(drafts.list.get()).toEqual([]);
    const all = applyMerge(app, drafts, await planMerge(app, everything, []), everything, true);
    expect(app.state.get().settings).toEqual({ units: 'metric', look: 'night', keepAwake: true });
    expect(app.activeRig()?.facts.name).toBe('Own boat');
    expect(app.state.get().hand).toMatchObject({ speed_mps: 1.1, counts_m: { starboard: 22.5 }, water: 'fresh' });
    all();
    expect(app.state.get()).toMatchObject({ rigs: before.rigs, settings: before.settings, hand: before.hand,
      activeRig: before.activeRig });
  });
});
