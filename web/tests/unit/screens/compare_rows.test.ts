import { beforeAll, describe, expect, test } from 'vitest';
import type { AboutAnswer, CompareAnswer, RigAnswer } from '../../../src/engine/answers';
import type { GoodRig } from '../../../src/state/app';
import type { Chased } from '../../../src/state/chase';
import { curveCounts, gainSentence, rowsOf } from '../../../src/screens/compare_rows';
import { Shower } from '../../../src/state/shown';
import { realEngine } from '../../engine';
import { oneRigger as one, twoRiggers as two } from '../example_rigs';

let shower: Shower;
let rigs: GoodRig[];
let view: Map<string, Chased<CompareAnswer>>;
beforeAll(async () => {
  const ask = await realEngine();
  shower = new Shower(ask({ question: 'about' }) as AboutAnswer, 'feet');
  rigs = [one, two].map((toml, i) => {
    const { facts } = ask({ question: 'rig_read', rig_toml: toml }) as RigAnswer;
    return { id: `rig-${i}`, toml, facts, problem: null };
  });
  view = new Map(rigs.map(({ id, toml }) => {
    const answer = ask({
      question: 'compare', rigs_toml: [toml], speed_mps: 1.2, bands: false, units: 'feet' }) as CompareAnswer;
    return [id, { answer, current: true, draws: 0, done: true, problem: undefined }];
  }));
});

describe('rows', () => {
  test('are one a rigger, each with a letter and its own gear', () => {
    const rows = rowsOf(rigs, view, new Map());
    expect(rows.map(({ letter, rigger }) => [letter, rigger.name])).toEqual([
      ['A', 'port'], ['B', 'port'], ['C', 'starboard']]);
    expect(rows[2]?.figures.name).toContain('starboard');
    expect(rows.every(({ banded }) => !banded)).toBe(true);
  });
  test('are drawn through what was compared, as long as there is no finer line', () => {
    const [row] = rowsOf(rigs, view, new Map());
    expect(row?.curve).toEqual(row?.figures.counts_m.map((count, i) => [count, row.figures.depth_m[i]?.median]));
  });
  test('leave out what is not answered yet', () => {
    view.delete('rig-0');
    expect(rowsOf(rigs, view, new Map()).map(({ letter }) => letter)).toEqual(['A', 'B']);
  });
});

test('the drawn line ends at the deepest count compared, or with the reel', () => {
  const facts = rigs[1]?.facts;
  expect(facts && curveCounts(facts, 60).at(-1)).toBeCloseTo(60, 9);
  expect(facts && curveCounts(facts, 500).at(-1)).toBeCloseTo(400 * 0.3048, 9);
  expect(facts && curveCounts(facts, 60)).toHaveLength(12);
});

test('a gain is a sentence', () => {
  const gain = { what: 'ball_1_lb_heavier', text: 'a ball 1 lb heavier' };
  expect(gainSentence({ ...gain, depth_m: 0.41 }, shower)).toBe('A ball 1 lb heavier: 1.3 ft deeper.');
  expect(gainSentence({ ...gain, depth_m: -0.41 }, shower)).toBe('A ball 1 lb heavier: 1.3 ft shallower.');
  expect(gainSentence({ ...gain, depth_m: 0.001 }, shower)).toBe('A ball 1 lb heavier: no deeper.');
});
