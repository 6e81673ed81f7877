import { describe, expect, test } from 'vitest';
import type { AboutAnswer } from '../../../../src/engine/answers';
import type { PhoneSpeed } from '../../../../src/phone/phone_speed';
import type { LegSoFar } from '../../../../src/screens/speed/leg_recorder';
import type { KeptLeg } from '../../../../src/screens/speed/legs';
import { ageAndAccuracy, bearing, compassPoint, legBasis, legTrouble, phoneWords, surfaceWords }
  from '../../../../src/screens/speed/words';
import { Shower } from '../../../../src/state/shown';

const MPH = 0.44704;
/** As the engine tells its units; only the speed's are needed. */
const shower = new Shower(
  { shown: { feet: { speed: { unit: 'mph', si: MPH, digits: 1 } } } } as unknown as AboutAnswer, 'feet');

test.each([[34, '034°'], [359.6, '000°'], [-1, '359°'], [720, '000°'], [5.4, '005°']])(
  'a bearing of %d is %s', (deg, words) => { expect(bearing(deg)).toBe(words); });

test.each([[0, 'N'], [22, 'N'], [23, 'NE'], [338, 'N'], [337, 'NW'], [-90, 'W']])(
  '%d is %s', (deg, point) => { expect(compassPoint(deg)).toBe(point); });

describe('age and accuracy', () => {
  test.each([
    [300, 0.1, 'just now, give or take 0.2 mph'], [2100, 0.05, '2 s ago, give or take 0.1 mph'],
    // Nothing is exact: never "0.0".
    [2100, 0.001, '2 s ago, give or take 0.1 mph'], [200_000, undefined, '3 min ago'],
  ])('%d ms, %s m/s', (age, accuracy, words) => {
    expect(ageAndAccuracy(age, accuracy, shower)).toBe(words);
  });
});

test.each([
  [0.2, 0, '0.4 mph with me'], [-0.2, 0, '0.4 mph against me'], [0, -0.1, '0.2 mph to port'],
  [-0.2, 0.1, '0.4 mph against me, 0.2 mph to starboard'], [0.01, -0.02, 'none'],
])('a current of %d along and %d across', (along_mps, across_mps, words) => {
  expect(surfaceWords({ along_mps, across_mps }, shower)).toBe(words);
});

test('the words beside the switch say where the speed comes from, in every state', () => {
  const watches: PhoneSpeed['watch'][] = ['off', 'starting', 'fixing', 'silent', 'nothing', 'refused', 'missing'];
  const all = watches.flatMap((watch) => (['none', 'fresh', 'old', 'lost'] as const).map(
    (fresh) => phoneWords({ watch, fresh, velocity: null, rough: false }, true)));
  for (const words of all) expect(words).toMatch(/\.$/);
  expect(phoneWords({ watch: 'silent', fresh: 'lost', velocity: null, rough: false }, true)).toMatch(/by hand is used/);
  expect(phoneWords({ watch: 'silent', fresh: 'old', velocity: null, rough: false }, true)).toMatch(/still used/);
  expect(phoneWords({ watch: 'off', fresh: 'none', velocity: null, rough: false }, false)).toMatch(/by hand/);
  expect(phoneWords({ watch: 'fixing', fresh: 'none', velocity: null, rough: true }, true)).toMatch(/50 m, too rough/);
});

describe('a leg', () => {
  const soFar: LegSoFar = { seconds: 34, speed_mps: 1.2, course_deg: 40, spread_mps: 0.1, left_out_s: 0,
    silent_s: 0.4, swing_deg: 3 };
  test('has no trouble while all is well', () => {
    expect(legTrouble(soFar, 'fixing')).toBeUndefined();
  });
  test('tells a lost fix with its age, and says it aloud without', () => {
    const trouble = legTrouble({ ...soFar, silent_s: 9.2 }, 'silent');
    expect(trouble?.words).toMatch(/No fix for 9 s\. The leg keeps its 34 s/);
    expect(trouble?.aloud).not.toMatch(/\d/);
    expect(legTrouble({ ...soFar, seconds: 0, silent_s: 9 }, 'starting')?.words).toMatch(/begins with the first/);
  });
  test('tells a turn and a refusal', () => {
    expect(legTrouble({ ...soFar, swing_deg: 40 }, 'fixing')?.words).toMatch(/swings/);
    expect(legTrouble(soFar, 'refused')?.words).toMatch(/type the leg/);
  });
  test('is described by what it rests on', () => {
    const leg: KeptLeg = { ground_speed_mps: 1.2, course_deg: 40, heading_deg: null, log_mps: null,
      seconds: 75, spread_mps: 0.1, by: 'phone', left_out_s: 0, ended_ms: 0 };
    expect(legBasis(leg, shower)).toBe('held 75 s, scatter 0.2 mph.');
    expect(legBasis({ ...leg, spread_mps: 0.01, left_out_s: 12 }, shower))
      .toBe('held 75 s, scatter under 0.1 mph. The fix was lost on the way: a gap of 12 s is left out.');
    expect(legBasis({ ...leg, by: 'hand', spread_mps: null }, shower)).toBe('typed, held 75 s');
  });
});
