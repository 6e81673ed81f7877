import { describe, expect, test } from 'vitest';
import { apart, type Fix } from '../../../src/phone/fix';
import { GroundFilter, type GroundVelocity } from '../../../src/phone/ground_speed';
import { Readings } from '../../../src/phone/readings';
import { walk, type Walk } from './walk';

const TROLLING = { speed_mps: 1.2, course_deg: 355 };

const own: Walk = { seconds: 120, way: () => TROLLING, own_mps: 0.1, place_m: 2, lasts_s: 30,
  accuracy_m: 5, seed: 1 };
const places: Walk = { ...own, own_mps: null };

/** What the filter tells after each fix. */
function follow(fixes: Fix[]): (GroundVelocity | null)[] {
  const readings = new Readings();
  const filter = new GroundFilter();
  return fixes.map((fix) => {
    const reading = readings.take(fix);
    if (typeof reading === 'object') filter.take(reading);
    return filter.now();
  });
}

function last(fixes: Fix[]): GroundVelocity {
  const told = follow(fixes).at(-1);
  if (!told) throw new Error('no speed at the end of the walk');
  return told;
}

/** How often the true speed lies within the accuracy told, over many walks, from 30 s on. */
function held(kind: Walk): number {
  let within = 0;
  let all = 0;
  for (let seed = 1; seed <= 60; seed += 1) {
    for (const told of follow(walk({ ...kind, seed })).slice(30)) {
      if (!told) continue;
      all += 1;
      if (Math.abs(told.speed_mps - TROLLING.speed_mps) <= told.accuracy_mps) within += 1;
    }
  }
  expect(all).toBeGreaterThan(60 * 80);
  return within / all;
}

describe('a steady boat', () => {
  test('has its speed and course, by the receiver', () => {
    const told = last(walk(own));
    expect(told.from).toBe('receiver');
    expect(Math.abs(told.speed_mps - 1.2)).toBeLessThan(0.1);
    expect(apart(told.course_deg ?? NaN, 355)).toBeLessThan(5);
    expect(told.at_ms).toBe(120_000);
  });
  test('has its speed and course, from places alone', () => {
    const told = last(walk(places));
    expect(told.from).toBe('positions');
    expect(Math.abs(told.speed_mps - 1.2)).toBeLessThan(0.2);
    expect(apart(told.course_deg ?? NaN, 355)).toBeLessThan(10);
  });
  test.each([
    ['the receiver', own], ['a receiver in waves', { ...own, own_mps: 0.25 }],
    ['places', places], ['places that jitter', { ...places, lasts_s: 2 }],
    ['places that wander', { ...places, lasts_s: 100 }],
  ] as const)('is told with an accuracy that holds nine times in ten: %s', (_, kind) => {
    const part = held(kind);
    expect(part).toBeGreaterThan(0.85);
  });
  test('is not told from places before it is worth telling', () => {
    const told = follow(walk({ ...places, lasts_s: 2 }));
    expect(told.slice(0, 3)).toEqual([null, null, null]);
    for (const speed of told) if (speed) expect(speed.accuracy_mps).toBeLessThanOrEqual(0.7);
  });
  test('is told at the first fix of a receiver that measures speed', () => {
    expect(follow(walk(own))[0]?.speed_mps).toBeGreaterThan(0.5);
  });
});

describe('waves', () => {
  // Surge of 0.4 m/s and yaw of 15 degrees, every 4 s.
  const wavy = walk({ ...own, own_mps: 0.02, way: (t) => ({
    speed_mps: 1.2 + 0.4 * Math.sin((2 * Math.PI * t) / 4.1),
    course_deg: 90 + 15 * Math.sin((2 * Math.PI * t) / 3.7) }) });
  test('are taken out, to a third or less', () => {
    const told = follow(wavy).slice(40).map((speed) => speed?.speed_mps ?? NaN);
    expect(Math.max(...told) - Math.min(...told)).toBeLessThan(0.8 / 3);
  });
  test('show in the accuracy', () => {
    expect(last(wavy).accuracy_mps).toBeGreaterThan(1.2 * last(walk({ ...own, own_mps: 0.02 })).accuracy_mps);
  });
});

describe('a boat that changes its way', () => {
  test('new throttle is followed within 20 s', () => {
    const told = follow(walk({ ...own, way: (t) => ({ speed_mps: t < 60 ? 1 : 1.6, course_deg: 20 }) }));
    expect(told[62]?.speed_mps).toBeLessThan(1.4);
    expect(Math.abs((told[80]?.speed_mps ?? NaN) - 1.6)).toBeLessThan(0.12);
  });
  test('a turn through north is followed, and never shows a way in between that was not', () => {
    const told = follow(walk({ ...own, way: (t) => ({ speed_mps: 1.2,
      course_deg: (330 + Math.min(60, Math.max(0, 2 * (t - 40)))) % 360 }) }));
    for (const speed of told.slice(10)) {
      const off = apart(speed?.course_deg ?? NaN, 0);
      expect(off).toBeLessThan(45);
    }
    expect(apart(told[110]?.course_deg ?? NaN, 30)).toBeLessThan(6);
  });
  test('a jump to another speed is no slip when it lasts', () => {
    const told = follow(walk({ ...own, way: (t) => ({ speed_mps: t < 60 ? 1 : 9, course_deg: 20 }) }));
    expect(told[61]?.speed_mps).toBeLessThan(1.3);
    expect(told[64]?.speed_mps).toBeGreaterThan(8);
  });
});

describe('a boat that lies still', () => {
  test.each([['receiver', own], ['positions', places]] as const)('has no course: %s', (_, kind) => {
    let [all, withCourse] = [0, 0];
    for (let seed = 1; seed <= 40; seed += 1) {
      const told = follow(walk({ ...kind, seed, way: () => ({ speed_mps: 0, course_deg: 0 }) }));
      all += told.length - 30;
      withCourse += told.slice(30).filter((speed) => speed?.course_deg != null).length;
      expect(told.at(-1)?.speed_mps).toBeLessThan(0.3);
    }
    expect(withCourse / all).toBeLessThan(0.02);
  });
  test('tells no speed when its receiver says none and gives no heading', () => {
    const fixes = walk(own).map((fix) => ({ ...fix, speed_mps: 0, heading_deg: NaN }));
    expect(last(fixes)).toMatchObject({ speed_mps: 0, course_deg: null, from: 'receiver' });
  });
  test('whose fixes repeat one place is known to lie still', () => {
    const [first] = walk(places);
    const fixes = Array.from({ length: 60 }, (_, i) => ({ ...first!, at_ms: 1000 * i }));
    expect(last(fixes).speed_mps).toBe(0);
  });
});

describe('bad fixes', () => {
  test.each([['receiver', own], ['positions', places]] as const)(
    'a single slip is refused and leaves no trace: %s', (_, kind) => {
      const clean = walk({ ...kind, lasts_s: 100 });
      const slipped = clean.map((fix, i) => i !== 60 ? fix
        : { ...fix, latitude_deg: fix.latitude_deg + 0.0004,
          speed_mps: fix.speed_mps === null ? null : 12 });
      const [with_slip, without] = [follow(slipped), follow(clean)];
      expect(Math.abs((with_slip[63]?.speed_mps ?? NaN) - (without[63]?.speed_mps ?? NaN)))
        .toBeLessThan(0.12);
    });
  test('copies and latecomers change nothing', () => {
    const clean = walk(own);
    const muddled = clean.flatMap((fix, i) => (i % 7 === 6 ? [fix, { ...fix }, clean[i - 3]!] : [fix]));
    expect(last(muddled)).toEqual(last(clean));
  });
  test('a copy with a newer time is not taken for a boat that stopped', () => {
    const clean = walk(places);
    const copied = clean.flatMap((fix) => [fix, { ...fix, at_ms: fix.at_ms + 500 }]);
    expect(Math.abs(last(copied).speed_mps - 1.2)).toBeLessThan(0.2);
  });
  test('a place known to 80 m only tells no speed', () => {
    expect(follow(walk({ ...places, accuracy_m: 80 })).filter(Boolean)).toEqual([]);
  });
  test('what is no number is passed over', () => {
    const clean = walk(own);
    const muddled = clean.flatMap((fix) => [{ ...fix, latitude_deg: NaN }, fix,
      { ...fix, at_ms: fix.at_ms + 1, accuracy_m: NaN }]);
    expect(last(muddled)).toEqual(last(clean));
  });
  test('a speed without a heading falls back on places', () => {
    const fixes = walk(own).map((fix) => ({ ...fix, heading_deg: null }));
    expect(last(fixes).from).toBe('positions');
  });
});

describe('dropouts', () => {
  test('a short one is bridged', () => {
    const fixes = walk(own).filter((fix) => fix.at_ms < 60_000 || fix.at_ms > 66_000);
    expect(Math.abs(last(fixes).speed_mps - 1.2)).toBeLessThan(0.1);
  });
  test('after a long one the old speed counts no more', () => {
    const fixes = walk({ ...own, way: (t) => ({ speed_mps: t < 60 ? 1 : 2, course_deg: t < 60 ? 0 : 180 }) })
      .filter((fix) => fix.at_ms < 50_000 || fix.at_ms > 90_000);
    const told = follow(fixes);
    const after = told[fixes.findIndex((fix) => fix.at_ms > 90_000)];
    expect(after?.speed_mps).toBeGreaterThan(1.6);
    expect(apart(after?.course_deg ?? NaN, 180)).toBeLessThan(15);
  });
  test('the way across a long one is no reading', () => {
    const fixes = walk(places).filter((fix) => fix.at_ms < 50_000 || fix.at_ms > 90_000);
    const told = follow(fixes);
    expect(told[fixes.findIndex((fix) => fix.at_ms > 90_000) + 1]).toBeNull();
  });
});
