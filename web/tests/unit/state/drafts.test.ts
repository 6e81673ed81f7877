import { describe, expect, test } from 'vitest';
import { checkedDrafts, Drafts, type Draft } from '../../../src/state/drafts';
import { listSetAside } from '../../../src/state/shelf';
import { MemoryShelf } from './memory_shelf';

const KEY = 'offplumb-drafts';
const noFailure = (words: string): void => { throw new Error(words); };
const text = (rig: string, words: string): Draft => ({ rig, touched: '2026-01-01T00:00:00.000Z', kind: 'text', text: words });

describe('unfinished rigs', () => {
  test('are there again at the next start', () => {
    const shelf = new MemoryShelf();
    const drafts = new Drafts(shelf);
    drafts.put(text('a', 'name ='), noFailure);
    drafts.put({ rig: 'b', touched: 'then', kind: 'form', document: { name: 'B', riggers: [] } }, noFailure);
    drafts.put(text('a', 'name = "A'), noFailure);
    drafts.flush();
    const again = new Drafts(shelf);
    expect(again.trouble).toBeUndefined();
    expect(again.of('a')).toEqual(text('a', 'name = "A'));
    expect(again.of('b')).toMatchObject({ document: { name: 'B', riggers: [] } });
    expect(again.of('c')).toBeUndefined();
  });
  test('go when they are dropped, and the last takes the key with it', () => {
    const shelf = new MemoryShelf();
    const drafts = new Drafts(shelf);
    drafts.put(text('a', 'x'), noFailure);
    drafts.flush();
    expect(shelf.getItem(KEY)).not.toBeNull();
    drafts.drop('a', noFailure);
    drafts.flush();
    expect(shelf.getItem(KEY)).toBeNull();
  });
  test('are told when they cannot be kept', () => {
    const shelf = new MemoryShelf();
    shelf.full = true;
    const drafts = new Drafts(shelf);
    const said: string[] = [];
    drafts.put(text('a', 'x'), (words) => said.push(words));
    drafts.flush();
    expect(said.join()).toMatch(/cannot be kept/);
    expect(drafts.of('a')).toBeDefined();
  });
  test.each(['{', '{"format":"offplumb-drafts","version":9,"drafts":[]}', 'null'])(
    'that cannot be read are set aside: %s', (kept) => {
      const shelf = new MemoryShelf({ [KEY]: kept });
      const drafts = new Drafts(shelf);
      expect(drafts.list.get()).toEqual([]);
      expect(drafts.trouble).toMatch(/kept/);
      expect(listSetAside(shelf).map((aside) => aside.text)).toEqual([kept]);
    });
  test('one that is none is left out and named', () => {
    const left: string[] = [];
    const good = text('a', 'x');
    expect(checkedDrafts([good, { rig: 'b', touched: 't', kind: 'form' }, 3, null], left)).toEqual([good]);
    expect(left).toEqual(['unfinished rig 2', 'unfinished rig 3', 'unfinished rig 4']);
  });
});
