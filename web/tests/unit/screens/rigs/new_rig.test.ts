import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { AboutAnswer, DocumentTable, RigAnswer } from '../../../../src/engine/answers';
import {
  ballWeights, constructions, diameters, shapes, splitBall, splitLine,
} from '../../../../src/screens/rigs/catalogue';
import { ballByWeight, ballChoice } from '../../../../src/screens/rigs/BodyFields';
import { put, tablesAt, valueAt } from '../../../../src/screens/rigs/document';
import { chooseLine } from '../../../../src/screens/rigs/LineFields';
import { plainRig, withClip, withRigger } from '../../../../src/screens/rigs/new_rig';
import { written, type Asks } from '../../../../src/state/rig_names';
import { realDesk } from '../../real_app';

// The engine in the browser's worker; here it is in this process.
vi.mock('../../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

let desk: Asks;
let catalogue: AboutAnswer['catalogue'];
beforeAll(async () => {
  desk = await realDesk();
  catalogue = (await desk.ask({ question: 'about' }) as AboutAnswer).catalogue;
});
/** 0.9 mm and 0.0009 m differ in the last digit. */
const rounded = (facts: RigAnswer['facts']): unknown => JSON.parse(JSON.stringify(facts,
  (_key, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(12)) : value)));
const good = (document: DocumentTable): Promise<RigAnswer> => written(desk, document);

describe('the catalogue', () => {
  test('is sorted into constructions with diameters, and shapes with weights', () => {
    const known = constructions(catalogue);
    expect(known.map(({ id }) => id)).toEqual(['wire-1x7', 'wire-7x7', 'braid', 'nylon', 'fluorocarbon']);
    expect(known.every(({ name }) => name.length > 3 && !/\d mm/.test(name))).toBe(true);
    expect(diameters(catalogue, 'wire-7x7')).toContain('0.8 mm');
    expect(shapes(catalogue)).toEqual(['sphere', 'finned', 'flat']);
    expect(ballWeights(catalogue)).toContain('12 lb');
  });
  test('names come apart', () => {
    expect(splitLine('wire-7x7-0.84mm')).toEqual({ construction: 'wire-7x7', diameter: '0.84 mm' });
    expect(splitLine('wire-7x7')).toEqual({ construction: 'wire-7x7', diameter: '' });
    expect(splitBall('ball-finned-15lb')).toEqual({ shape: 'finned', weight: '15 lb' });
    expect(splitBall('anchor')).toBeUndefined();
  });
  test('every line and ball of it means the same taken apart', async () => {
    for (const { id } of catalogue.lines) {
      const { construction, diameter } = splitLine(id);
      const rig = plainRig(catalogue, 'feet', 'x');
      const whole = await good(put(rig, ['riggers', 0, 'line'], { from: id }));
      const apart = await good(put(rig, ['riggers', 0, 'line'], { from: construction, diameter }));
      expect(rounded(apart.facts)).toEqual(rounded(whole.facts));
    }
    for (const { id } of catalogue.balls) {
      const rig = plainRig(catalogue, 'feet', 'x');
      const whole = await good(put(rig, ['riggers', 0, 'ball'], { from: id }));
      const apart = await good(put(rig, ['riggers', 0, 'ball'], ballByWeight({ from: id })));
      expect(rounded(apart.facts)).toEqual(rounded(whole.facts));
    }
  });
});

describe('a choice of line', () => {
  test('keeps the thickness and nothing else of the old one', () => {
    expect(chooseLine({ from: 'wire-1x7-0.8mm', normal_drag_coefficient: 1.1 }, 'from:braid')).toEqual({ from: 'braid', diameter: '0.8 mm' });
    expect(chooseLine({ from: 'braid', diameter: '0.5 mm' }, 'own')).toEqual({ diameter: '0.5 mm' });
    expect(chooseLine({ diameter: '0.5 mm' }, 'kind:wire')).toEqual({ kind: 'wire', diameter: '0.5 mm' });
  });
});

test('what kind of ball is written is seen', () => {
  expect(ballChoice({ from: 'ball-flat-8lb' })).toBe('flat');
  expect(ballChoice({ weight: '12 lb' })).toBe('sphere');
  expect(ballChoice({ weight: '', shape: 'finned' })).toBe('finned');
  expect(ballChoice({ weight_in_water: '50 N', drag_area: '0.004 m2' })).toBe('own');
  expect(ballChoice({})).toBe('sphere');
  expect(ballChoice({ from: 'anchor' })).toBe('anchor');
});

describe.each(['feet', 'metric'] as const)('in %s', (units) => {
  test('riggers up to six are good, each with a name of its own, on alternate sides', async () => {
    let document = plainRig(catalogue, units, 'Six');
    for (let i = 0; i < 5; i += 1) document = withRigger(document);
    const { facts } = await good(document);
    expect(facts.riggers.map((rigger) => rigger.name)).toEqual(
      ['port', 'starboard', 'centre', 'rigger 4', 'rigger 5', 'rigger 6']);
    expect(facts.riggers[0]?.boom_tip[1]).toBeLessThan(0);
    expect(facts.riggers[1]?.boom_tip[1]).toBeGreaterThan(0);
  });
  test('clips stack above one another', async () => {
    let document = plainRig(catalogue, units, 'Stack');
    for (let i = 0; i < 3; i += 1) document = withClip(document, ['riggers', 0], catalogue, units);
    const { facts } = await good(document);
    const heights = facts.riggers[0]?.clips.map((clip) => clip.above_ball_m) ?? [];
    expect(heights).toHaveLength(4);
    expect([...heights].sort((a, b) => a - b)).toEqual(heights);
    expect(tablesAt(document, ['riggers', 0, 'clips'])[1]?.['name']).toBe('stacked');
  });
  test('a clip comes to a rigger without one', async () => {
    const bare = put(plainRig(catalogue, units, 'Bare'), ['riggers', 0, 'clips'], undefined);
    const document = withClip(bare, ['riggers', 0], catalogue, units);
    expect((await good(document)).facts.riggers[0]?.clips).toHaveLength(1);
  });
});

test('a second rigger does not take over the counter marks of the first', () => {
  const document = put(plainRig(catalogue, 'feet', 'x'), ['riggers', 0, 'counter_marks'], [{ reads: '50 ft', measured: '49 ft' }]);
  expect(valueAt(withRigger(document), ['riggers', 1, 'counter_marks'])).toBeUndefined();
});
