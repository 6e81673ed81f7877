import { expect, test } from 'vitest';
import { plotOf, spread } from '../../../src/screens/compare_plot';

test('count and depth have one scale', () => {
  const plot = plotOf([{ curve: [[10, 9], [60, 45]] }], 60, 340);
  expect(plot.x(30) - plot.x(20)).toBeCloseTo(plot.y(30) - plot.y(20), 9);
  expect(plot.y(45)).toBeLessThan(plot.bottom);
  expect(plot.x(60)).toBeCloseTo(plot.right, 9);
});

test('the diagonal is where the count is the depth', () => {
  const plot = plotOf([{ curve: [[60, 45]] }], 60, 340);
  const [x, y] = plot.plumb;
  expect(x - plot.x(0)).toBeCloseTo(y - plot.y(0), 9);
  expect(y).toBeLessThanOrEqual(plot.bottom);
});

test('letters that would touch are moved apart, in their order', () => {
  expect(spread([100, 20, 102, 101])).toEqual([100, 20, 134, 117]);
  expect(spread([10, 40])).toEqual([10, 40]);
});
