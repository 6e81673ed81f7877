import { describe, expect, test } from 'vitest';
import { apart, type Fix } from '../../../../src/phone/fix';
import { Readings } from '../../../../src/phone/readings';
import { LegRecorder, TURNING_DEG } from '../../../../src/screens/speed/leg_recorder';
import { walk, type Walk } from '../../phone/walk';

const leg: Walk = { seconds: 90, way: () => ({ speed_mps: 1.3, course_deg: 359 }), own_mps: 0.1,
  place_m: 2, lasts_s: 30, accuracy_m: 5, seed: 3 };

function record(fixes: Fix[], started_ms = 0): LegRecorder {
  const readings = new Readings();
  const recorder = new LegRecorder(started_ms);
  for (const fix of fixes) {
    const reading = readings.take(fix);
    if (typeof reading === 'object' && reading.at_ms >= started_ms) recorder.take(reading);
  }
  return recorder;
}

describe('a leg', () => {
  test('has the mean velocity, its time and its scatter', () => {
    const soFar = record(walk(leg)).soFar(90_000);
    expect(soFar.seconds).toBe(90);
    expect(Math.abs(soFar.speed_mps - 1.3)).toBeLessThan(0.03);
    expect(apart(soFar.course_deg ?? NaN, 359)).toBeLessThan(2);
    expect(soFar.spread_mps).toBeGreaterThan(0.08);
    expect(soFar.spread_mps).toBeLessThan(0.12);
    expect(soFar).toMatchObject({ left_out_s: 0, silent_s: 0 });
    expect(soFar.swing_deg).toBeLessThan(8);
  });
  test('counts nothing from before its start', () => {
    const fixes = walk({ ...leg, way: (t) => ({ speed_mps: t <= 30 ? 3 : 1.3, course_deg: 90 }) });
    const soFar = record(fixes, 30_500).soFar(90_000);
    expect(Math.abs(soFar.speed_mps - 1.3)).toBeLessThan(0.05);
    expect(soFar.seconds).toBe(59);
  });
  test('is empty before there are two readings', () => {
    const soFar = record(walk({ ...leg, seconds: 0 })).soFar(4000);
    expect(soFar).toMatchObject({ seconds: 0, course_deg: null, spread_mps: null, silent_s: 4 });
  });
  test('leaves a gap out, and says so', () => {
    const fixes = walk({ ...leg, way: (t) => ({ speed_mps: t > 30 && t < 60 ? 3 : 1.3, course_deg: 90 }) })
      .filter((fix) => fix.at_ms <= 30_000 || fix.at_ms >= 60_000);
    const soFar = record(fixes).soFar(90_000);
    expect(soFar.seconds).toBe(60);
    expect(soFar.left_out_s).toBe(30);
    expect(Math.abs(soFar.speed_mps - 1.3)).toBeLessThan(0.05);
  });
  test('keeps what it has while the fix is lost', () => {
    const recorder = record(walk({ ...leg, seconds: 40 }));
    expect(recorder.soFar(70_000)).toMatchObject({ seconds: 40, silent_s: 30 });
  });
  test('goes on after a stop without what lies between', () => {
    const fixes = walk(leg);
    const readings = new Readings();
    const recorder = new LegRecorder(0);
    for (const fix of fixes) {
      const reading = readings.take(fix);
      if (typeof reading !== 'object') continue;
      if (fix.at_ms === 50_000) recorder.resume();
      if (fix.at_ms <= 40_000 || fix.at_ms >= 50_000) recorder.take(reading);
    }
    expect(recorder.soFar(90_000)).toMatchObject({ seconds: 80, left_out_s: 10 });
  });
  test('tells when the boat turns', () => {
    const turning = walk({ ...leg, way: (t) => ({ speed_mps: 1.3, course_deg: t < 60 ? 0 : 4 * (t - 60) }) });
    expect(record(turning).soFar(90_000).swing_deg).toBeGreaterThan(TURNING_DEG);
  });
});

describe('a leg from places alone', () => {
  test('has a spread that is worth what its mean is worth', () => {
    // The engine takes spread^2 10 / T for the variance of the mean, each way.
    const errors: number[] = [];
    let told = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      const soFar = record(walk({ ...leg, own_mps: null, lasts_s: 20, seed })).soFar(90_000);
      const angle = ((soFar.course_deg ?? NaN) - 359) * Math.PI / 180;
      errors.push(soFar.speed_mps * Math.cos(angle) - 1.3, soFar.speed_mps * Math.sin(angle));
      told += ((soFar.spread_mps ?? NaN) ** 2 * 10) / soFar.seconds / 200;
    }
    const seen = errors.reduce((sum, e) => sum + e * e, 0) / errors.length;
    expect(Math.sqrt(told / seen)).toBeGreaterThan(0.85);
    expect(Math.sqrt(told / seen)).toBeLessThan(1.3);
  });
  test('stays below what the engine takes for a receiver at fault', () => {
    const soFar = record(walk({ ...leg, own_mps: null, seconds: 20, lasts_s: 1 })).soFar(20_000);
    expect(soFar.spread_mps).toBeLessThan(2);
  });
});
