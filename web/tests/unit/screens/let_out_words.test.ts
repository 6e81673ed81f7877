import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { AboutAnswer, CountAnswer, RigAnswer, RigFacts, RiggerCount } from '../../../src/engine/answers';
import type { CountRequest } from '../../../src/engine/requests';
import {
  bandWords, leanWords, reachWords, refusal, remedySentence, restOfGear, spokenWords,
} from '../../../src/screens/let_out_words';
import { Shower } from '../../../src/state/shown';
import { realEngine } from '../../engine';
import { oneRigger as one, twoRiggers as two } from '../example_rigs';

// Whole bands take a while.
vi.setConfig({ testTimeout: 60_000 });

const FOOT = 0.3048;
const MPH = 0.44704;
type RiggerFacts = RigFacts['riggers'][number];

let ask: Awaited<ReturnType<typeof realEngine>>;
let shower: Shower;
beforeAll(async () => {
  ask = await realEngine();
  shower = new Shower(ask({ question: 'about' }) as AboutAnswer, 'feet');
});

function facts(toml: string, name: string): RiggerFacts {
  const read = ask({ question: 'rig_read', rig_toml: toml }) as RigAnswer;
  return read.facts.riggers.find((rigger) => rigger.name === name) as RiggerFacts;
}

function count(toml: string, rigger: string, more: Partial<CountRequest>): RiggerCount {
  const answer = ask({
    question: 'count', rig_toml: toml, rigger, depth_m: 90 * FOOT, of: 'lure', speed_mps: 2.6 * MPH,
    bands: true, units: 'feet', ...more,
  }) as CountAnswer;
  return answer.riggers[0] as RiggerCount;
}

// The figures below are those that `offplumb count` prints for the same questions.
describe('the lure at 90 ft, 2.6 mph, two riggers', () => {
  test('starboard, with a stacked clip', () => {
    const found = count(two, 'starboard', {});
    const rigger = facts(two, 'starboard');
    expect(shower.number(found.count_m?.median ?? 0, 'depth')).toBe('98');
    expect(bandWords(found, shower)).toBe('96 to 102');
    expect(leanWords(found, shower)).toBe('28 deg');
    expect(restOfGear(found, rigger, shower)).toEqual([
      { name: 'Ball', words: '93 ft, 90 to 94', deeper: true },
      { name: 'Stacked lure', words: '69 ft, 66 to 71', deeper: false }]);
    expect(spokenWords(found, rigger, shower, '90 ft')).toBe('starboard: let out 98 ft, 96 to 102.');
  });
  test('the stacked lure asked for leaves the low one to be told', () => {
    const found = count(two, 'starboard', { clip: 'stacked', bands: false });
    const names = restOfGear(found, facts(two, 'starboard'), shower).map(({ name }) => name);
    expect(names).toEqual(['Ball', 'Low lure']);
  });
  test('the ball asked for leaves the lures to be told, none deeper', () => {
    const found = count(two, 'port', { of: 'ball', bands: false });
    const rigger = facts(two, 'port');
    expect(restOfGear(found, rigger, shower)).toMatchObject([{ name: 'Lure', deeper: false }]);
  });
});

describe('the ball at 300 ft, 2.7 mph, out of reach', () => {
  test('the reason and the remedies are sentences', () => {
    const found = count(one, 'port', { of: 'ball', depth_m: 300 * FOOT, speed_mps: 2.7 * MPH });
    const rigger = facts(one, 'port');
    expect(found.count_m).toBeNull();
    expect(refusal(found, rigger, '300 ft')).toBe('No count puts the ball at 300 ft.');
    expect(reachWords(found, rigger, shower)).toBe('The deepest the ball goes: 204 ft, 146 to 269, ' +
      'at a count of 326 ft, where the line leans 65 deg at the boom.');
    expect(found.remedies.map(remedySentence)).toEqual([
      'It gets there at a speed of 1.9 mph.', 'It gets there with a ball of 20 lb.']);
    expect(spokenWords(found, rigger, shower, '300 ft')).toBe('port: No count puts the ball at 300 ft.');
  });
  test('the end of the line on the reel is the other reason', () => {
    const found = count(two, 'starboard', { depth_m: 280 * FOOT });
    expect(reachWords(found, facts(two, 'starboard'), shower)).toMatch(/where the line on the reel ends\.$/);
  });
});

test('a band without an upper end says so', () => {
  const found = { ...count(one, 'port', {}), count_high_open: true };
  expect(bandWords(found, shower)).toMatch(/^\d+ to \d+ or more$/);
});

test.each([
  ['thinner_line', 'a line of 0.5 mm', 'It gets there with a line of 0.5 mm.'],
  ['no_flasher', 'no flasher', 'It gets there with no flasher.'],
  ['more_line', 'fill the reel to 500 ft of line', 'Fill the reel to 500 ft of line: then it gets there.'],
  ['something_new', 'a longer boom', 'What gets it there: a longer boom.'],
])('remedy %s', (what, text, sentence) => {
  expect(remedySentence({ what, text, value: null, unit: null })).toBe(sentence);
});
