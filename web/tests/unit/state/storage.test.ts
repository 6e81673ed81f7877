import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { usualHand } from '../../../src/state/hand';
import { everythingText, parseStored, Storage, storedText, type Stored } from '../../../src/state/storage';
import { listSetAside } from '../../../src/state/shelf';
import { MemoryShelf } from './memory_shelf';

const KEY = 'offplumb';
const keptText = (name: string): string => readFileSync(new URL(`../kept/${name}`, import.meta.url), 'utf8');

const stored: Stored = {
  rigs: [{ id: 'a', toml: 'name = "A"' }, { id: 'b', toml: 'name = "B"' }],
  activeRig: 'b',
  hand: usualHand(),
  settings: { units: 'knots', look: 'night', keepAwake: true },
};
const noFailure = (words: string): void => { throw new Error(words); };

describe('a text of version 1, kept by an earlier page', () => {
  test('is read whole', () => {
    const { everything, left, unknown } = parseStored(keptText('version-1.json'));
    expect(left).toEqual([]);
    expect(unknown).toEqual({});
    expect(everything.rigs.map((rig) => rig.id)).toEqual([
      '3f0c2a52-0a51-4c11-9a3e-2f0c51b0d6aa', '1764066000000-k3j2h1', '9d1']);
    expect(everything.rigs[1]?.toml).toContain('# calliper, wet: 0.84 mm\n');
    expect(everything.activeRig).toBe('1764066000000-k3j2h1');
    expect(everything.hand).toEqual({
      speed_mps: 1.1, usePhone: false, counts_m: { starboard: 22.5 }, balls_kg: { starboard: 6.8 },
      rigger: 'starboard', wanted: { depth_m: 21, of: 'ball' },
      current: [{ depth_m: 0, along_mps: 0.2, across_mps: 0 }, { depth_m: 15, along_mps: -0.1, across_mps: 0.05 }],
      bottom_m: 41.5, water: 'fresh',
    });
    expect(everything.settings).toEqual({ units: 'metric', look: 'night', keepAwake: true });
    expect(everything.drafts).toEqual([]);
  });
  test('goes through the browser\'s storage and is written again with nothing lost', () => {
    const shelf = new MemoryShelf({ [KEY]: keptText('version-1.json') });
    const storage = new Storage(shelf);
    const read = storage.read();
    expect(storage.trouble).toBeUndefined();
    if (!read) throw new Error('nothing was read');
    storage.write(read, noFailure);
    storage.flush();
    expect(JSON.parse(shelf.getItem(KEY) ?? '')).toEqual(JSON.parse(keptText('version-1.json')));
  });
  test('and an export of it has what was unfinished too', () => {
    const { everything, left } = parseStored(keptText('version-1-everything.json'));
    expect(left).toEqual([]);
    expect(everything.written).toBe('2026-11-22T06:00:00.000Z');
    expect(everything.drafts.map(({ rig, kind }) => [rig, kind])).toEqual([
      ['1764066000000-k3j2h1', 'form'], ['9d1', 'text']]);
  });
});

describe('what is written', () => {
  test('is read back the same', () => {
    expect(parseStored(storedText(stored)).everything).toMatchObject(stored);
    const drafts = [{ rig: 'a', touched: '2026-01-01T00:00:00.000Z', kind: 'text' as const, text: 'name = ' }];
    const when = new Date('2026-02-03T04:05:06Z');
    expect(parseStored(everythingText(stored, drafts, when)).everything).toEqual({
      ...stored, drafts, written: '2026-02-03T04:05:06.000Z' });
  });
  test('keeps keys of a newer page', () => {
    const newer = JSON.stringify({ ...JSON.parse(storedText(stored)) as object, touches: [1, 2] });
    const shelf = new MemoryShelf({ [KEY]: newer });
    const storage = new Storage(shelf);
    storage.read();
    storage.write(stored, noFailure);
    storage.flush();
    expect(JSON.parse(shelf.getItem(KEY) ?? '')).toMatchObject({ touches: [1, 2], activeRig: 'b' });
  });
  test('says once when the browser refuses, and again after it worked', () => {
    const shelf = new MemoryShelf();
    const storage = new Storage(shelf);
    const said: string[] = [];
    const write = (): void => {
      storage.write(stored, (words) => said.push(words));
      storage.flush();
    };
    shelf.full = true;
    write();
    write();
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/the quota is used up.*Export/);
    shelf.full = false;
    write();
    shelf.full = true;
    write();
    expect(said).toHaveLength(2);
  });
  test('says so where the browser keeps nothing at all', () => {
    const said: string[] = [];
    const storage = new Storage(undefined);
    expect(storage.read()).toBeUndefined();
    storage.write(stored, (words) => said.push(words));
    storage.flush();
    expect(said.join()).toMatch(/keeps nothing/);
  });
});

describe('what cannot be read', () => {
  test.each([
    ['broken JSON', '{"format":"offplumb-page","version":1,"rigs":[', /broken/],
    ['another file', '{"a":1}', /not a file of this page/],
    ['a list', '[]', /not a file of this page/],
    ['a newer version', '{"format":"offplumb-page","version":2}', /version is 2.*reads version 1/],
    ['no version', '{"format":"offplumb-page"}', /version is undefined/],
  ])('%s is refused in words, and set aside whole', (_what, text, words) => {
    expect(() => parseStored(text)).toThrow(words);
    const shelf = new MemoryShelf({ [KEY]: text });
    const storage = new Storage(shelf);
    expect(storage.read()).toBeUndefined();
    expect(storage.trouble).toMatch(words);
    expect(listSetAside(shelf).map((aside) => aside.text)).toEqual([text]);
    storage.write(stored, noFailure);
    storage.flush();
    expect(listSetAside(shelf).map((aside) => aside.text)).toEqual([text]);
  });
  test('the same text is set aside once', () => {
    const shelf = new MemoryShelf({ [KEY]: 'x' });
    new Storage(shelf).read();
    new Storage(shelf).read();
    expect(listSetAside(shelf)).toHaveLength(1);
  });
  test('is not written over when it cannot be set aside', () => {
    const shelf = new MemoryShelf({ [KEY]: 'x' });
    shelf.full = true;
    const storage = new Storage(shelf);
    storage.read();
    expect(storage.trouble).toMatch(/left as it is/);
    shelf.full = false;
    storage.write(stored, noFailure);
    storage.flush();
    expect(shelf.getItem(KEY)).toBe('x');
  });
  test('in part: the rest is used, and the whole is set aside', () => {
    const text = JSON.stringify({
      format: 'offplumb-page', version: 1, activeRig: 7,
      rigs: [{ id: 'a', toml: 'A' }, { id: 'b' }, { id: 'a', toml: 'C' }, { toml: 'D' }],
      hand: { speed_mps: 'fast', counts_m: { port: 1e999 }, current: [], bottom_m: null, water: 'fresh' },
      settings: { units: 'furlongs', look: 'night' },
    }).replace('null,"water"', 'null,"later":1,"water"');
    const { everything, left } = parseStored(text);
    expect(everything.rigs.map((rig) => rig.toml)).toEqual(['A', 'C', 'D']);
    expect(new Set(everything.rigs.map((rig) => rig.id)).size).toBe(3);
    expect(everything.hand).toEqual({ bottom_m: null, later: 1, water: 'fresh' });
    expect(everything.settings).toEqual({ look: 'night' });
    expect(left).toEqual(['rig 2', 'in hand: speed_mps', 'in hand: counts_m', 'in hand: current', 'settings: units']);
    const shelf = new MemoryShelf({ [KEY]: text });
    const storage = new Storage(shelf);
    expect(storage.read()?.rigs).toHaveLength(3);
    expect(storage.trouble).toMatch(/rig 2/);
    expect(listSetAside(shelf)).toHaveLength(1);
  });
});
