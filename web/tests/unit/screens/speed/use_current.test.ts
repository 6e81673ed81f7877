import { describe, expect, test } from 'vitest';
import { seenFrom, turnedRound, withSurface } from '../../../../src/screens/speed/use_current';
import { seaOf, type Hand } from '../../../../src/state/sea';
import { usualHand } from '../../../../src/state/hand';

const drawn = [
  { depth_m: 0, along_mps: 0.2, across_mps: 0 },
  { depth_m: 20, along_mps: -0.1, across_mps: 0.3 },
];

describe('a current as the boat sees it', () => {
  test.each([
    [90, 90, 0.5, 0], [90, 270, -0.5, 0], [90, 0, 0, 0.5], [90, 180, 0, -0.5], [350, 20, 0.433, -0.25],
  ])('toward %i, going %i', (toward, way, along, across) => {
    const seen = seenFrom(0.5, toward, way);
    expect(seen.along_mps).toBeCloseTo(along, 3);
    expect(seen.across_mps).toBeCloseTo(across, 3);
  });
  test('comes out of the page as it went in, over ground', () => {
    const hand: Hand = { ...usualHand(), usePhone: true,
      current: withSurface(drawn, seenFrom(0.5, 200, 140)) };
    const sea = seaOf(hand, { speed_mps: 1.2, course_deg: 140 });
    expect(sea.current?.points[0]?.speed_mps).toBeCloseTo(0.5);
    expect(sea.current?.points[0]?.toward_deg).toBeCloseTo(200);
  });
});

test('the profile keeps its shape', () => {
  const moved = withSurface(drawn, { along_mps: -0.3, across_mps: 0.1 });
  expect(moved[0]).toMatchObject({ depth_m: 0, along_mps: -0.3, across_mps: 0.1 });
  expect(moved[1]?.along_mps).toBeCloseTo(-0.6);
  expect(moved[1]?.across_mps).toBeCloseTo(0.4);
  expect(withSurface([], { along_mps: 1, across_mps: 2 })).toEqual([{ depth_m: 0, along_mps: 1, across_mps: 2 }]);
});

test('turning round twice changes nothing, and makes no minus nothing', () => {
  expect(turnedRound(turnedRound(drawn))).toEqual(drawn);
  expect(Object.is(turnedRound(drawn)[0]?.across_mps, 0)).toBe(true);
});
