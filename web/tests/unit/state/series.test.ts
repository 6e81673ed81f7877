import { describe, expect, test } from 'vitest';
import { seriesOf, valuesOf } from '../../../src/state/series';

describe('values of a series', () => {
  test('end where it says, for all that decimals are not exact', () => {
    const values = valuesOf({ from: 1.5, to: 4.5, by: 0.1 });
    expect(values).toHaveLength(31);
    expect(values?.at(-1)).toBeCloseTo(4.5, 12);
  });
  test('stop before what a step does not meet', () => {
    expect(valuesOf({ from: 20, to: 70, by: 20 })).toEqual([20, 40, 60]);
  });
  test('are one where first and last are one', () => {
    expect(valuesOf({ from: 20, to: 20, by: 5 })).toEqual([20]);
  });
  test.each([
    ['no step', { from: 0, to: 10, by: 0 }],
    ['a step back', { from: 0, to: 10, by: -1 }],
    ['a last before the first', { from: 10, to: 0, by: 1 }],
    ['a step that never gets there', { from: 0, to: 10, by: 0.001 }],
  ])('are none: %s', (_, series) => {
    expect(valuesOf(series)).toBeUndefined();
  });
});

test('seriesOf undoes valuesOf', () => {
  expect(seriesOf([20, 40, 60])).toEqual({ from: 20, to: 60, by: 20 });
  expect(valuesOf(seriesOf([7]) ?? { from: 0, to: -1, by: 1 })).toEqual([7]);
  expect(seriesOf([])).toBeUndefined();
});
