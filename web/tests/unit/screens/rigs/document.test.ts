import { describe, expect, test } from 'vitest';
import type { DocumentTable } from '../../../../src/engine/answers';
import {
  has, isWithin, pathText, put, tableAt, tablesAt, textAt, valueAt, withItem, withoutItem,
} from '../../../../src/screens/rigs/document';

const document: DocumentTable = {
  name: 'A', other: { kept: [1, 2] },
  riggers: [
    { name: 'port', line: 'wire-1x7-0.8mm', ball: { weight: '12 lb' }, clips: [{ setback: '20 ft' }, { setback: '30 ft' }] },
    { name: 'starboard', strumming: true, drag: 1.2 },
  ],
};

describe('a key of the document', () => {
  test('is written as the engine writes it', () => {
    expect(pathText(['riggers', 0, 'clips', 1, 'setback'])).toBe('riggers[0].clips[1].setback');
    expect(pathText(['name'])).toBe('name');
  });
  test('holds what is under it', () => {
    expect(isWithin('riggers[0].clips[1].setback', ['riggers', 0, 'clips'])).toBe(true);
    expect(isWithin('riggers[0].line.diameter', ['riggers', 0, 'line'])).toBe(true);
    expect(isWithin('riggers[0].line_on_reel', ['riggers', 0, 'line'])).toBe(false);
    expect(isWithin('riggers[10]', ['riggers', 1])).toBe(false);
    expect(isWithin(null, ['name'])).toBe(false);
  });
  test('is read as a text, a table or tables', () => {
    expect(textAt(document, ['riggers', 1, 'drag'])).toBe('1.2');
    expect(textAt(document, ['riggers', 1, 'strumming'])).toBe('true');
    expect(textAt(document, ['riggers', 5, 'name'])).toBe('');
    expect(textAt(document, ['riggers', 0, 'ball'])).toBe('');
    expect(tableAt(document, ['riggers', 0, 'line'])).toEqual({ from: 'wire-1x7-0.8mm' });
    expect(tableAt(document, ['riggers', 1, 'line'])).toEqual({});
    expect(tablesAt(document, ['riggers', 0, 'clips'])).toHaveLength(2);
    expect(has({ a: '', b: 0, c: null }, ['a']) || has({ c: null }, ['c'])).toBe(false);
    expect(has({ b: 0 }, ['b'])).toBe(true);
  });
});

describe('a change', () => {
  test('leaves the old document and everything else as it is', () => {
    const before = structuredClone(document);
    const after = put(document, ['riggers', 0, 'clips', 1, 'setback'], '31 ft');
    expect(document).toEqual(before);
    expect(valueAt(after, ['riggers', 0, 'clips', 1, 'setback'])).toBe('31 ft');
    expect(after['other']).toBe(document['other']);
    expect(valueAt(after, ['riggers', 1])).toBe(valueAt(document, ['riggers', 1]));
  });
  test('makes the tables that are missing, and a text into its table', () => {
    expect(put({}, ['riggers', 0, 'boom_tip', 'up'], '1 m')).toEqual({ riggers: [{ boom_tip: { up: '1 m' } }] });
    expect(valueAt(put(document, ['riggers', 0, 'line', 'diameter'], '0.84 mm'), ['riggers', 0, 'line']))
      .toEqual({ from: 'wire-1x7-0.8mm', diameter: '0.84 mm' });
  });
  test('takes a key away', () => {
    expect(put({ a: 1, b: 2 }, ['b'], undefined)).toEqual({ a: 1 });
  });
  test('takes an item away, and back', () => {
    const list = ['riggers', 0, 'clips'];
    const less = withoutItem(document, list, 0);
    expect(tablesAt(less, list)).toEqual([{ setback: '30 ft' }]);
    expect(withItem(less, list, 0, { setback: '20 ft' })).toEqual(document);
    const none = withoutItem(less, list, 0);
    expect(valueAt(none, list)).toBeUndefined();
    expect(tablesAt(withItem(none, list, 0, { setback: '9 ft' }), list)).toEqual([{ setback: '9 ft' }]);
  });
});
