import { describe, expect, test } from 'vitest';
import { lureName, writtenName } from '../../../src/state/words';

test('a lure is called by its clip only where there are several', () => {
  expect(lureName([{ name: 'low' }], 0)).toBe('the lure');
  expect(lureName([{ name: 'low' }, { name: '' }], 0)).toBe('the low lure');
  expect(lureName([{ name: 'low' }, { name: '' }], 1)).toBe('lure 2');
});

describe('the name written in a rig that cannot be read', () => {
  test('is found in either kind of quotes', () => {
    expect(writtenName('# mine\nname = "My boat"\n[[riggers]]\nname = "port"')).toBe('My boat');
    expect(writtenName("name='Old boat'")).toBe('Old boat');
  });
  test('or there is none', () => {
    expect(writtenName('[[riggers]')).toBe('A rig without a name');
    expect(writtenName('name = ""')).toBe('A rig without a name');
  });
});
