import { describe, expect, test } from 'vitest';
import { fileNameFor, textOfFile } from '../../../src/parts/files';

describe('a file\'s name', () => {
  test.each([
    ['My boat', 'My boat.toml'], ['a/b\\c: d?', 'a b c d.toml'], ['..', 'rig.toml'], ['', 'rig.toml'],
    ['CON', 'rig CON.toml'], ['Süd', 'Süd.toml'], ['x'.repeat(200), `${'x'.repeat(80)}.toml`], ['  a \n b ', 'a b.toml'],
  ])('%j becomes %j', (name, file) => expect(fileNameFor(name, '.toml')).toBe(file));
});

function chosen(name: string, content: string | Uint8Array) {
  const all = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  return { name, size: all.length, arrayBuffer: () => Promise.resolve(all.slice().buffer as ArrayBuffer) };
}

describe('a file that was chosen', () => {
  test('is read as UTF-8, without its mark', async () => {
    expect(await textOfFile(chosen('a.toml', '\ufeffname = "Süd"'))).toEqual({ name: 'a.toml', text: 'name = "Süd"' });
  });
  test('that is no text, or far too large, is refused in words', async () => {
    expect(await textOfFile(chosen('b.jpg', new Uint8Array([0xff, 0xd8, 0xff]))))
      .toMatchObject({ trouble: expect.stringMatching(/no text in UTF-8/) as string });
    expect(await textOfFile(chosen('c', '12345'), 4))
      .toMatchObject({ trouble: expect.stringMatching(/5 bytes; at most 4/) as string });
  });
});
