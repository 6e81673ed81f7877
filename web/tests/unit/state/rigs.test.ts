import { describe, expect, test } from 'vitest';
import type { RigFacts } from '../../../src/engine/answers';
import { usualHand } from '../../../src/state/hand';
import { carryHand, freeName, nameInText, putBack, sameName } from '../../../src/state/rigs';

describe('names', () => {
  test('a taken one gets the next number', () => {
    expect(freeName('My boat', [])).toBe('My boat');
    expect(freeName('My boat', ['my boat ', 'My boat (2)'])).toBe('My boat (3)');
    expect(freeName('My boat (2)', ['My boat (2)'])).toBe('My boat (3)');
  });
  test('are one to a person whatever their capitals', () => {
    expect(sameName(' Port', 'port')).toBe(true);
    expect(sameName('port', 'ports')).toBe(false);
  });
  test('are found in a text that cannot be read', () => {
    expect(nameInText('# x\nname = "Half"  # later\n[[riggers]]\nname = "port"')).toBe('Half');
    expect(nameInText("name='a \"b\"'")).toBe('a "b"');
    expect(nameInText('[[riggers]]\nname = "port"')).toBeUndefined();
    expect(nameInText('name = ""')).toBeUndefined();
  });
});

test('a rig goes back to where it was', () => {
  const [a, b, c] = ['a', 'b', 'c'].map((id) => ({ id, toml: '' }));
  if (!a || !b || !c) throw new Error();
  expect(putBack([a, c], b, 1)).toEqual([a, b, c]);
  expect(putBack([a], c, 9)).toEqual([a, c]);
  expect(putBack([a, b], b, 0)).toEqual([a, b]);
});

describe('what is in hand', () => {
  const facts = (...names: string[]): RigFacts => ({ name: '', invented: false,
    riggers: names.map((name) => ({ name }) as RigFacts['riggers'][number]) });
  const hand = { ...usualHand(), counts_m: { port: 11, starboard: 22 }, balls_kg: { starboard: 7 }, rigger: 'starboard' };
  test('goes with a rigger that is renamed', () => {
    expect(carryHand(hand, facts('port', 'starboard'), facts('port', 'right'))).toMatchObject(
      { counts_m: { port: 11, right: 22 }, balls_kg: { right: 7 }, rigger: 'right' });
  });
  test('goes with both when two swap names', () => {
    expect(carryHand(hand, facts('port', 'starboard'), facts('starboard', 'port'))).toMatchObject(
      { counts_m: { port: 22, starboard: 11 }, balls_kg: { port: 7 }, rigger: 'port' });
  });
  test('stays when a rigger comes or goes', () => {
    expect(carryHand(hand, facts('port', 'starboard'), facts('port'))).toBe(hand);
  });
});
