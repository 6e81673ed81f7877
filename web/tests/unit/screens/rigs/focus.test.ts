import { expect, test } from 'vitest';
import { riggerOf } from '../../../../src/screens/rigs/focus';
import { lineSpan } from '../../../../src/screens/rigs/TextTab';

test('the rigger that a problem is about', () => {
  expect(riggerOf('riggers[3].clips[0].setback')).toBe(3);
  expect(riggerOf('riggers')).toBeUndefined();
  expect(riggerOf(null)).toBeUndefined();
});

test('where a line of a text begins and ends', () => {
  expect(lineSpan('a\nbcd\n\ne', 2)).toEqual([2, 5]);
  expect(lineSpan('a\nbcd\n\ne', 4)).toEqual([7, 8]);
  expect(lineSpan('a', 9)).toEqual([2, 2]);
});
