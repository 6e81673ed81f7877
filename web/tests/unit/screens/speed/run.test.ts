import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Reading } from '../../../../src/phone/readings';
import { TwoWayRun, type RunSurroundings } from '../../../../src/screens/speed/run';

beforeEach(() => { vi.useFakeTimers(); });
afterEach(() => { vi.useRealTimers(); });

function aboard() {
  const readers = new Set<(reading: Reading) => void>();
  const wants = new Map<string, boolean>();
  const buzz = vi.fn();
  let time = 5000;
  let text: string | null = null;
  const around: RunSurroundings = {
    phone: {
      speed: {
        listen(reader: (reading: Reading) => void) { readers.add(reader); return () => readers.delete(reader); },
        want(who: string, on: boolean) { wants.set(`speed ${who}`, on); },
      },
      wake: { want(who: string, on: boolean) { wants.set(`wake ${who}`, on); } },
    } as unknown as RunSurroundings['phone'],
    place: { getItem: () => text, setItem: (_, value) => { text = value; }, removeItem: () => { text = null; } },
    buzz, now_ms: () => time, wall_ms: () => 1_700_000_000_000 + time,
  };
  let last = 0;
  const sail = (seconds: number, north: number): void => {
    for (let i = 0; i < seconds; i += 1) {
      time += 1000;
      vi.advanceTimersByTime(1000);
      const dt_s = time - last > 10_000 ? null : (time - last) / 1000;
      last = time;
      const reading: Reading = { at_ms: time, dt_s, velocity: { north, east: 0.01 * (i % 2) }, from: 'receiver',
        scatter_mps: 0.1, place_m: 2 };
      for (const reader of [...readers]) reader(reading);
    }
  };
  return { run: new TwoWayRun(around), around, sail, wants, buzz, readers };
}

describe('a run', () => {
  test('records two legs, with phone and screen kept on only meanwhile', () => {
    const { run, sail, wants, readers } = aboard();
    run.start(0);
    expect(wants).toEqual(new Map([['wake run', true], ['speed run', true]]));
    sail(41, 1.4);
    expect(run.state.get().running?.soFar.seconds).toBe(40);
    expect(run.stop()?.leg).toMatchObject({ seconds: 40, by: 'phone', course_deg: expect.closeTo(0.2, 0) });
    expect(wants).toEqual(new Map([['wake run', false], ['speed run', false]]));
    expect(readers.size).toBe(0);
    sail(30, 0);
    run.start(1);
    sail(31, -1);
    run.stop();
    const [first, second] = run.state.get().legs;
    expect(first?.ground_speed_mps).toBeCloseTo(1.4, 2);
    expect(second?.ground_speed_mps).toBeCloseTo(1, 2);
    expect(second?.course_deg).toBeCloseTo(180, 0);
  });
  test('buzzes once when a minute is full', () => {
    const { run, sail, buzz } = aboard();
    run.start(0);
    sail(60, 1);
    expect(buzz).not.toHaveBeenCalled();
    sail(60, 1);
    expect(buzz).toHaveBeenCalledTimes(1);
  });
  test('nothing recorded is no leg, and an earlier one stays', () => {
    const { run, sail } = aboard();
    run.start(0);
    expect(run.stop()).toBeUndefined();
    expect(run.state.get().legs[0]).toBeNull();
    run.start(0);
    sail(30, 1);
    run.stop();
    const kept = run.state.get().legs[0];
    run.start(0);
    run.stop();
    expect(run.state.get().legs[0]).toEqual(kept);
  });
  test('a stop is undone by going on', () => {
    const { run, sail } = aboard();
    run.start(0);
    sail(31, 1);
    const stopped = run.stop();
    sail(5, 1);
    stopped?.goOn();
    expect(run.state.get().legs[0]).toBeNull();
    sail(21, 1);
    expect(run.stop()?.leg).toMatchObject({ seconds: 50, left_out_s: 6 });
  });
  test('a leg begun anew by mistake is had back', () => {
    const { run, sail } = aboard();
    run.start(0);
    sail(30, 1);
    run.stop();
    const kept = run.state.get().legs[0];
    run.start(0);
    sail(10, 2);
    run.leave();
    expect(run.state.get()).toMatchObject({ running: null, legs: [kept, null] });
  });
  test('putting both away is undone', () => {
    const { run, sail } = aboard();
    for (const which of [0, 1] as const) { run.start(which); sail(30, 1); run.stop(); }
    const { legs } = run.state.get();
    const back = run.clear();
    expect(run.state.get().legs).toEqual([null, null]);
    back();
    expect(run.state.get().legs).toEqual(legs);
  });
  test('legs are there after a reload', () => {
    const { run, around, sail } = aboard();
    run.start(0);
    sail(30, 1);
    run.stop();
    expect(new TwoWayRun(around).state.get().legs).toEqual(run.state.get().legs);
  });
});
