import { beforeAll, expect, test } from 'vitest';
import type { Band, CardAnswer } from '../../../src/engine/answers';
import { gridOf, today } from '../../../src/screens/card_cells';
import { realEngine } from '../../engine';
import { twoRiggers as rig } from '../example_rigs';

const FOOT = 0.3048;
let answer: CardAnswer;
beforeAll(async () => {
  const ask = await realEngine();
  answer = ask({
    question: 'card', rig_toml: rig, rigger: 'starboard', bands: false, units: 'feet',
    speeds_mps: [0.5, 1.2, 2], counts_m: [10 * FOOT, 100 * FOOT, 200 * FOOT],
  }) as CardAnswer;
});

test('a depth stands where there is one, and a reason where there is none', () => {
  const grid = gridOf(answer, 'ball');
  expect(grid).toHaveLength(3);
  // The stacked clip is 24 ft above the ball, so at a count of 10 it is above the water.
  expect(grid[0]?.[0]).toBe('no place');
  expect(grid[2]?.[2]).toBe('leans');
  expect((grid[1]?.[1] as Band).median).toBe(answer.riggers[0]?.ball_depth_m[1]?.[1]?.median);
});

test('each lure has depths of its own', () => {
  const low = gridOf(answer, 0)[1]?.[1] as Band;
  const stacked = gridOf(answer, 1)[1]?.[1] as Band;
  expect(low.median).toBe(answer.riggers[0]?.lures[0]?.depth_m[1]?.[1]?.median);
  expect(stacked.median).toBeLessThan(low.median);
  expect(gridOf(answer, 7).flat().every((cell) => cell === 'no place')).toBe(true);
});

test('a card is dated by the day where the person is', () => {
  expect(today(new Date(2024, 4, 7, 23, 59))).toBe('2024-05-07');
});
