import { describe, expect, test, vi } from 'vitest';
import type { Desk } from '../../../../src/engine/desk';
import type { Request } from '../../../../src/engine/requests';
import { put, textAt, valueAt, type Path } from '../../../../src/screens/rigs/document';
import { editOf, RigEdit } from '../../../../src/screens/rigs/edit';
import { Drafts } from '../../../../src/state/drafts';
import { exampleRig, realApp, realDesk } from '../../real_app';
import { MemoryShelf } from '../../state/memory_shelf';

// The engine in the browser's worker; here it is in this process.
vi.mock('../../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

const SETBACK: Path = ['riggers', 0, 'clips', 0, 'setback'];

async function editing(rig = 'one-rigger', desk?: Pick<Desk, 'ask'>) {
  const { app, said } = await realApp([exampleRig(rig)], desk);
  const shelf = new MemoryShelf();
  const drafts = new Drafts(shelf);
  const id = app.state.get().rigs[0]?.id ?? '';
  const edit = new RigEdit(app, drafts, id);
  await edit.open();
  const type = (path: Path, value: string): void => {
    const { document } = edit.state.get();
    if (document) edit.change(put(document, path, value));
  };
  const kept = (): string => app.state.get().rigs[0]?.toml ?? '';
  return { app, said, shelf, drafts, id, edit, type, kept };
}

describe('a field of the form', () => {
  test('that is right is kept at once, and no draft stays', async () => {
    const { app, edit, drafts, id, type, kept } = await editing();
    type(SETBACK, '33 ft');
    expect(edit.state.get().status).toBe('checking');
    expect(drafts.of(id)).toBeDefined();
    await edit.settle();
    expect(edit.state.get()).toMatchObject({ status: 'kept', problem: null });
    expect(kept()).toContain('setback = "33 ft"');
    expect(app.activeRig()?.facts.riggers[0]?.clips[0]?.setback_m).toBeCloseTo(33 * 0.3048, 9);
    expect(drafts.of(id)).toBeUndefined();
  });
  test('that is wrong is marked; the last good rig stays, what was typed is kept', async () => {
    const { app, edit, drafts, shelf, id, type, kept } = await editing();
    const before = kept();
    type(SETBACK, '20 lb');
    await edit.settle();
    const { problem, status, document } = edit.state.get();
    expect(status).toBe('unfinished');
    expect(problem?.path).toBe('riggers[0].clips[0].setback');
    expect(problem?.message).toMatch(/lb/);
    expect(kept()).toBe(before);
    expect(textAt(document ?? {}, SETBACK)).toBe('20 lb');
    drafts.flush();
    const next = new RigEdit(app, new Drafts(shelf), id);
    await next.open();
    await next.settle();
    expect(next.state.get()).toMatchObject({ status: 'unfinished', takenUp: true, mode: 'form' });
    expect(valueAt(next.state.get().document ?? {}, SETBACK)).toBe('20 lb');
    expect(next.state.get().problem?.path).toBe('riggers[0].clips[0].setback');
  });
  test('what the form has no field for goes through untouched', async () => {
    const { edit, type } = await editing('two-riggers');
    const before = edit.state.get().document;
    type(['riggers', 1, 'clips', 1, 'setback'], '31 ft');
    await edit.settle();
    const now = edit.state.get();
    const read = await realDesk();
    const answer = await read.ask({ question: 'rig_read', rig_toml: now.text });
    expect('document' in answer && answer.document).toEqual(put(before ?? {}, ['riggers', 1, 'clips', 1, 'setback'], '31 ft'));
  });
  test('of the latest only counts, whatever order the answers come in', async () => {
    const engine = await realDesk();
    const held: (() => void)[] = [];
    let hold = false;
    const desk = {
      ask: async <R extends Request>(request: R) => {
        if (hold && request.question === 'rig_write') await new Promise<void>((go) => held.push(go));
        return engine.ask(request);
      },
    };
    const { edit, type, kept } = await editing('one-rigger', desk);
    hold = true;
    type(SETBACK, '21 ft');
    const first = edit.settle();
    type(SETBACK, '22 ft');
    const second = edit.settle();
    held[1]?.();
    await second;
    held[0]?.();
    await first;
    expect(kept()).toContain('setback = "22 ft"');
    expect(edit.state.get().status).toBe('kept');
  });
  test('counts and balls in hand go with a rigger that is renamed', async () => {
    const { app, edit, type } = await editing();
    app.changeHand({ counts_m: { port: 12 }, balls_kg: { port: 6 } });
    type(['riggers', 0, 'name'], 'left');
    await edit.settle();
    expect(app.state.get().hand).toMatchObject({ counts_m: { left: 12 }, balls_kg: { left: 6 }, rigger: 'left' });
  });
  test('an engine that stopped is told, and nothing is lost', async () => {
    const engine = await realDesk();
    let broken = false;
    const desk = { ask: async <R extends Request>(request: R) => {
      if (broken) throw new Error('it trapped');
      return engine.ask(request);
    } };
    const { edit, drafts, id, type } = await editing('one-rigger', desk);
    broken = true;
    type(SETBACK, '21 ft');
    await edit.settle();
    expect(edit.state.get().problem).toMatchObject({ kind: 'fault', message: 'It could not be checked (it trapped).' });
    expect(drafts.of(id)).toBeDefined();
  });
});

describe('ways back', () => {
  test('from the unfinished to the last good rig, and to the unfinished again', async () => {
    const { edit, drafts, id, type } = await editing();
    type(SETBACK, 'x');
    await edit.settle();
    const undo = await edit.drop();
    expect(edit.state.get()).toMatchObject({ status: 'kept', problem: null });
    expect(textAt(edit.state.get().document ?? {}, SETBACK)).toBe('20 ft');
    expect(drafts.of(id)).toBeUndefined();
    undo();
    await edit.settle();
    expect(textAt(edit.state.get().document ?? {}, SETBACK)).toBe('x');
    expect(drafts.of(id)).toBeDefined();
  });
  test('to the rig as it was found, remarks and all', async () => {
    const { edit, type, kept } = await editing();
    const found = kept();
    expect(edit.changed).toBe(false);
    type(SETBACK, '25 ft');
    await edit.settle();
    expect(edit.changed).toBe(true);
    const undo = await edit.revert();
    expect(kept()).toBe(found);
    undo();
    expect(kept()).toContain('setback = "25 ft"');
  });
});

describe('as text', () => {
  test('a right text is kept as it was typed', async () => {
    const { edit, kept } = await editing();
    await edit.show('text');
    const text = edit.state.get().text.replace('setback = "20 ft"', 'setback = "19 ft"  # wet');
    edit.changeText(text);
    await edit.settle();
    expect(kept()).toBe(text);
    await edit.show('form');
    expect(textAt(edit.state.get().document ?? {}, SETBACK)).toBe('19 ft');
  });
  test('a wrong one says its line, and the form waits until it is right', async () => {
    const { edit, drafts, id, kept } = await editing();
    const before = kept();
    await edit.show('text');
    edit.changeText(`${before}\nnonsense = `);
    await edit.settle();
    expect(edit.state.get().problem?.line).toBeGreaterThan(before.split('\n').length - 1);
    await edit.show('form');
    expect(edit.state.get().mode).toBe('text');
    expect(kept()).toBe(before);
    expect(drafts.of(id)).toMatchObject({ kind: 'text', text: `${before}\nnonsense = ` });
  });
  test('a kept rig that cannot be read opens as text, and can be got right', async () => {
    const { app } = await realApp([exampleRig('one-rigger'), 'name = "Half"\n[[riggers]]\n']);
    const half = app.state.get().rigs[1];
    const edit = new RigEdit(app, new Drafts(new MemoryShelf()), half?.id ?? '');
    await edit.open();
    expect(edit.state.get()).toMatchObject({ mode: 'text', status: 'unfinished', document: null });
    edit.changeText(exampleRig('one-rigger').replace('one rigger"', 'mended"'));
    await edit.settle();
    expect(app.state.get().rigs[1]?.facts?.name).toBe('Spindrift Sound, mended');
  });
});

test('a rig that was deleted meanwhile does not come back', async () => {
  const { app, edit, type } = await editing('two-riggers');
  app.setRigs([]);
  type(['name'], 'Ghost');
  await edit.settle();
  expect(app.state.get().rigs).toEqual([]);
});

test('there is one edit of a rig', async () => {
  const { app, drafts, id } = await editing();
  expect(editOf(app, drafts, id)).toBe(editOf(app, drafts, id));
  expect(editOf(app, drafts, 'other')).not.toBe(editOf(app, drafts, id));
});
