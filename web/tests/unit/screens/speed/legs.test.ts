import { describe, expect, test } from 'vitest';
import { keepLegs, keptLegs, requestOf, type KeptLeg, type Place } from '../../../../src/screens/speed/legs';

const leg: KeptLeg = { ground_speed_mps: 1.2, course_deg: 40, heading_deg: null, log_mps: 1.1, seconds: 80,
  spread_mps: 0.1, by: 'phone', left_out_s: 0, ended_ms: 1_700_000_000_000 };
const NOW = leg.ended_ms + 60_000;

function place(text: string | null = null): Place & { text: string | null } {
  return {
    text,
    getItem() { return this.text; },
    setItem(_: string, value: string) { this.text = value; },
    removeItem() { this.text = null; },
  };
}

describe('legs over a reload', () => {
  test('come back', () => {
    const here = place();
    keepLegs(here, [leg, null]);
    expect(keptLegs(here, NOW)).toEqual([leg, null]);
    keepLegs(here, [null, null]);
    expect(here.text).toBeNull();
  });
  test('not after hours: the current is another', () => {
    const here = place();
    keepLegs(here, [leg, { ...leg, ended_ms: NOW }]);
    expect(keptLegs(here, NOW + 119.5 * 60_000)).toEqual([null, { ...leg, ended_ms: NOW }]);
  });
  test.each(['', '{', 'null', '7', '{"format":"other","legs":[]}',
    JSON.stringify({ format: 'offplumb-two-way-1', legs: [{ ...leg, seconds: 'long' }, 3] }),
  ])('what is no run is none: %s', (text) => {
    expect(keptLegs(place(text), NOW)).toEqual([null, null]);
  });
  test('a browser that keeps nothing does no harm', () => {
    const refusing: Place = {
      getItem() { throw new Error('no'); }, setItem() { throw new Error('no'); }, removeItem() { throw new Error('no'); },
    };
    keepLegs(refusing, [leg, leg]);
    expect(keptLegs(refusing, NOW)).toEqual([null, null]);
    expect(keptLegs(undefined, NOW)).toEqual([null, null]);
  });
});

test('is asked only with both legs, and with nothing that the engine does not know', () => {
  expect(requestOf([leg, null], 'feet')).toBeUndefined();
  const request = requestOf([leg, { ...leg, course_deg: 220 }], 'knots');
  expect(request).toEqual({ question: 'two_way', units: 'knots', legs: [
    { ground_speed_mps: 1.2, course_deg: 40, heading_deg: null, log_mps: 1.1, seconds: 80, spread_mps: 0.1 },
    { ground_speed_mps: 1.2, course_deg: 220, heading_deg: null, log_mps: 1.1, seconds: 80, spread_mps: 0.1 }] });
});
