import { describe, expect, test } from 'vitest';
import { FixClock } from '../../../src/phone/fix_clock';
import { SteadyClock } from '../../../src/phone/steady_clock';

function clocks() {
  const time = { counter: 1000, wall: 1_700_000_000_000 };
  const clock = new SteadyClock(() => time.counter, () => time.wall);
  const pass = (ms: number): void => { time.counter += ms; time.wall += ms; };
  return { time, clock, pass };
}

describe('the steady clock', () => {
  test('counts time', () => {
    const { clock, pass } = clocks();
    const before = clock.now_ms();
    pass(2500);
    expect(clock.now_ms() - before).toBe(2500);
  });
  test('counts sleep, in which the counter stood still', () => {
    const { clock, pass, time } = clocks();
    const before = clock.now_ms();
    time.wall += 3_600_000;
    pass(1000);
    expect(clock.now_ms() - before).toBe(3_601_000);
  });
  test('does not go back with the wall clock, and goes on at once', () => {
    const { clock, pass, time } = clocks();
    const before = clock.now_ms();
    time.wall -= 3_600_000;
    pass(1000);
    expect(clock.now_ms() - before).toBe(1000);
    time.wall += 3_600_000;
    pass(1000);
    expect(clock.now_ms() - before).toBeGreaterThanOrEqual(2000);
  });
  test('is not hurried by the grain of the wall clock', () => {
    const { clock, time } = clocks();
    const before = clock.now_ms();
    for (let i = 0; i < 6000; i += 1) {
      time.counter += 100;
      time.wall += i % 2 ? 0 : 200;
      clock.now_ms();
    }
    expect(clock.now_ms() - before).toBe(600_000);
  });
});

describe('the time of a fix', () => {
  const EPOCH = 1_700_000_000_000;
  test('is counted from its own clock, less the quickest delivery', () => {
    const clock = new FixClock();
    expect(clock.place(EPOCH, 500)).toBe(500);
    expect(clock.place(EPOCH + 1000, 1800)).toBe(1500);
    expect(clock.place(EPOCH + 2000, 2400)).toBe(2400);
  });
  test('follows a clock that is set back an hour, at once', () => {
    const clock = new FixClock();
    clock.place(EPOCH, 0);
    clock.place(EPOCH + 1000, 1000);
    expect(clock.place(EPOCH + 2000 - 3_600_000, 2000)).toBe(2000);
    expect(clock.place(EPOCH + 3000 - 3_600_000, 3000)).toBe(3000);
  });
  test('follows a clock that is set forward, at once', () => {
    const clock = new FixClock();
    clock.place(EPOCH, 0);
    expect(clock.place(EPOCH + 1000 + 3_600_000, 1000)).toBe(1000);
  });
  test('follows one that is set back a little, within ten fixes', () => {
    const clock = new FixClock();
    for (let t = 0; t < 20; t += 1) clock.place(EPOCH + 1000 * t, 1000 * t);
    let at = 0;
    for (let t = 20; t < 31; t += 1) at = clock.place(EPOCH + 1000 * t - 5000, 1000 * t);
    expect(at).toBe(30_000);
  });
  test('is the arrival for a fix without one', () => {
    expect(new FixClock().place(NaN, 1234)).toBe(1234);
  });
});
