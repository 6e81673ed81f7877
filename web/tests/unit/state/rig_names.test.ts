import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { RigAnswer } from '../../../src/engine/answers';
import { putName, renamed, written, type Asks } from '../../../src/state/rig_names';
import { exampleRig, realDesk } from '../real_app';

// The engine in the browser's worker; here it is in this process.
vi.mock('../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

let desk: Asks;
beforeAll(async () => { desk = await realDesk(); });

const read = async (toml: string): Promise<RigAnswer> =>
  await desk.ask({ question: 'rig_read', rig_toml: toml }) as RigAnswer;

describe('another name at the top of a text', () => {
  test('takes the place of the old one; remarks and riggers stay', () => {
    const text = '# mine\nname = "Old \\" one"   # keep\ninvented = true\n[[riggers]]\nname = "port"\n';
    expect(putName(text, 'New "x"')).toBe(
      '# mine\nname = "New \\"x\\""   # keep\ninvented = true\n[[riggers]]\nname = "port"\n');
    expect(putName("name='a'", 'b')).toBe('name="b"');
  });
  test('goes behind the remarks where there was none', () => {
    expect(putName('# mine\n\n[[riggers]]\nname = "port"\n', 'X')).toBe(
      '# mine\n\nname = "X"\n\n[[riggers]]\nname = "port"\n');
    expect(putName('invented = true', 'X')).toBe('name = "X"\ninvented = true');
  });
  test('with what a text of TOML may not hold', () => {
    expect(putName('name = "a"', 'b\n\u007f\\')).toBe('name = "b\\u000a\\u007f\\\\"');
  });
});

describe('a rig under another name', () => {
  test('keeps its text but for the name', async () => {
    const toml = exampleRig('two-riggers');
    const copy = await renamed(desk, await read(toml), toml, 'Süd: "2"');
    expect(copy.facts.name).toBe('Süd: "2"');
    expect(copy.toml).toBe(toml.replace('"Spindrift Sound, two riggers"', '"Süd: \\"2\\""'));
  });
  test('is written anew where its text has the name in another way', async () => {
    const toml = exampleRig('one-rigger').replace(/^name = .*$/m, '"name" = "Spindrift"');
    const before = await read(toml);
    const copy = await renamed(desk, before, toml, 'Other');
    expect(copy.facts).toEqual({ ...before.facts, name: 'Other' });
    expect(copy.document).toEqual({ ...before.document, name: 'Other' });
  });
  test('that is no rig is refused in the engine\'s words', async () => {
    await expect(written(desk, { name: 'x' })).rejects.toThrow(/0 riggers/);
  });
});
