import { describe, expect, test } from 'vitest';
import { doorsOf, type Door, type DoorId, type Found } from '../../../src/phone/doors';

const atHome: Found = {
  protocol: 'https:', secure: true, oneFile: false, offline: 'ready', storage: 'kept', tilt: 'off',
  location: { watch: 'off', permission: 'prompt' }, awake: { state: 'off', wanted: false },
};

function door(id: DoorId, change: Partial<Found> = {}): Door {
  const found = doorsOf({ ...atHome, ...change }).find((d) => d.id === id);
  if (!found) throw new Error(`no door ${id}`);
  return found;
}

test('every door stands in the list once, with words', () => {
  const doors = doorsOf(atHome);
  expect(doors.map(({ id }) => id)).toEqual(['location', 'tilt', 'awake', 'offline', 'storage']);
  for (const { words, name } of doors) {
    expect(words).toMatch(/\.$/);
    expect(name).not.toBe('');
  }
});

describe('location', () => {
  test.each([
    ['asks first', {}, 'ask', /will ask/],
    ['allowed', { location: { watch: 'off', permission: 'granted' } }, 'yes', /^Allowed/],
    ['fixing', { location: { watch: 'fixing', permission: 'granted' } }, 'yes', /knows where/],
    ['no sky', { location: { watch: 'nothing', permission: 'granted' } }, 'yes', /view of the sky/],
    ['refused', { location: { watch: 'off', permission: 'denied' } }, 'no', /settings/],
    ['refused, a browser that tells no permission',
      { location: { watch: 'refused', permission: 'unknown' } }, 'no', /settings/],
    ['missing', { location: { watch: 'missing', permission: 'unknown' } }, 'no', /no location/],
    ['plain http', { protocol: 'http:', secure: false }, 'no', /needs https or this same device.*plain http/],
    ['a file', { protocol: 'file:', secure: false }, 'no', /needs https or this same device.*opened from disk/],
    ['a file, a browser that allows it', { protocol: 'file:' }, 'ask', /ask each time/],
  ] as [string, Partial<Found>, Door['open'], RegExp][])('%s', (_, change, open, words) => {
    expect(door('location', change)).toMatchObject({ open, words: expect.stringMatching(words) });
  });
  test('whatever is missing, the words say what to do', () => {
    for (const change of [{ secure: false }, { location: { watch: 'missing', permission: 'unknown' } },
      { location: { watch: 'refused', permission: 'denied' } }] as Partial<Found>[]) {
      expect(door('location', change).words).toMatch(/by hand/i);
    }
  });
});

test.each([
  ['tilt', { tilt: 'missing' }, 'no', /by eye/],
  ['tilt', { tilt: 'refused' }, 'no', /Refused/],
  ['tilt', { tilt: 'silent' }, 'no', /reads no level/],
  ['tilt', { tilt: 'reading' }, 'yes', /leans/],
  ['tilt', { secure: false, protocol: 'http:' }, 'no', /plain http/],
  ['awake', { awake: { state: 'missing', wanted: true } }, 'no', /display settings/],
  ['awake', { awake: { state: 'on', wanted: true } }, 'yes', /stays on/],
  ['awake', { awake: { state: 'refused', wanted: true } }, 'no', /battery/],
  ['awake', {}, 'ask', /switched on/],
  ['offline', { offline: 'installing' }, 'ask', /still needed/],
  ['offline', { offline: 'failed' }, 'no', /next visit/],
  ['offline', { offline: 'unsupported' }, 'no', /one-file/],
  ['offline', { offline: 'unsupported', secure: false, protocol: 'http:' }, 'no', /plain http/],
  ['offline', { offline: 'unsupported', oneFile: true, protocol: 'file:' }, 'yes', /opens anywhere/],
  ['storage', { storage: 'none' }, 'no', /Export/],
  ['storage', { storage: 'may be cleared' }, 'ask', /Export/],
  ['storage', {}, 'yes', /until you delete/],
] as [DoorId, Partial<Found>, Door['open'], RegExp][])('%s %o', (id, change, open, words) => {
  expect(door(id, change)).toMatchObject({ open, words: expect.stringMatching(words) });
});
