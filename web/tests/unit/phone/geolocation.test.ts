import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Fix } from '../../../src/phone/fix';
import { ANEW_MS, PlaceWatch, SILENT_MS, type Surroundings } from '../../../src/phone/geolocation';

beforeEach(() => { vi.useFakeTimers({ now: 1_700_000_000_000 }); });
afterEach(() => { vi.useRealTimers(); });

/** A browser in which the test plays the phone. */
function surroundings() {
  const watches = new Map<number, { take: PositionCallback; fail: PositionErrorCallback }>();
  const start_ms = Date.now();
  const calls = { begun: 0, permission: (_: PermissionState) => {}, seen: () => {} };
  const around: Surroundings = {
    geolocation: {
      watchPosition(take, fail, options) {
        expect(options).toMatchObject({ enableHighAccuracy: true, maximumAge: 0 });
        calls.begun += 1;
        watches.set(calls.begun, { take, fail: fail! });
        return calls.begun;
      },
      clearWatch: (id) => { watches.delete(id); },
    },
    onPermission: (change) => { calls.permission = change; },
    onSeen: (seen) => { calls.seen = seen; },
    now_ms: () => Date.now() - start_ms,
  };
  const fix = (): void => {
    for (const { take } of watches.values()) {
      take({ timestamp: Date.now(), coords: { latitude: 47, longitude: -123, accuracy: 6, speed: 1.1,
        heading: 40 } } as GeolocationPosition);
    }
  };
  const fail = (code: number): void => {
    for (const { fail: tell } of [...watches.values()]) tell({ code } as GeolocationPositionError);
  };
  return { around, calls, watches, fix, fail };
}

function watching() {
  const browser = surroundings();
  const watch = new PlaceWatch(browser.around);
  const fixes: Fix[] = [];
  watch.listen((fix) => fixes.push(fix));
  return { ...browser, watch, fixes };
}

describe('the watch', () => {
  test('asks for nothing before it is started', () => {
    const { watch, calls } = watching();
    vi.advanceTimersByTime(10 * ANEW_MS);
    expect(watch.state.get()).toBe('off');
    expect(calls.begun).toBe(0);
  });
  test('hands on what the browser gives', () => {
    const { watch, fix, fixes } = watching();
    watch.start();
    expect(watch.state.get()).toBe('starting');
    vi.advanceTimersByTime(2000);
    fix();
    expect(watch.state.get()).toBe('fixing');
    expect(fixes).toEqual([{ at_ms: 2000, latitude_deg: 47, longitude_deg: -123, accuracy_m: 6,
      speed_mps: 1.1, heading_deg: 40 }]);
  });
  test('is missing where the browser has none, and starting does no harm', () => {
    const { around } = surroundings();
    const watch = new PlaceWatch({ ...around, geolocation: undefined });
    watch.start();
    expect(watch.state.get()).toBe('missing');
    watch.stop();
    expect(watch.state.get()).toBe('missing');
  });
  test('falls silent without a fix, and comes back with one', () => {
    const { watch, fix } = watching();
    watch.start();
    fix();
    vi.advanceTimersByTime(SILENT_MS - 1);
    expect(watch.state.get()).toBe('fixing');
    vi.advanceTimersByTime(2);
    expect(watch.state.get()).toBe('silent');
    fix();
    expect(watch.state.get()).toBe('fixing');
  });
  test('an error on the way is no end of it', () => {
    const { watch, fix, fail } = watching();
    watch.start();
    fix();
    fail(2);
    fail(3);
    expect(watch.state.get()).toBe('fixing');
    fix();
    expect(watch.state.get()).toBe('fixing');
  });
  test('says that there is nothing when the first fix does not come', () => {
    const { watch, fail, fix } = watching();
    watch.start();
    fail(2);
    expect(watch.state.get()).toBe('nothing');
    fix();
    expect(watch.state.get()).toBe('fixing');
  });
  test('says so too when the browser says nothing at all', () => {
    const { watch } = watching();
    watch.start();
    vi.advanceTimersByTime(20_000);
    expect(watch.state.get()).toBe('nothing');
  });
  test('begins anew when a watch has died, one watch at a time', () => {
    const { watch, calls, watches, fix } = watching();
    watch.start();
    fix();
    vi.advanceTimersByTime(3 * ANEW_MS + 10);
    expect(calls.begun).toBe(4);
    expect(watches.size).toBe(1);
    expect(watch.state.get()).toBe('silent');
    fix();
    expect(watch.state.get()).toBe('fixing');
  });
  test('begins anew when the page is seen again, if it was on', () => {
    const { watch, calls } = watching();
    calls.seen();
    expect(calls.begun).toBe(0);
    watch.start();
    calls.seen();
    expect(calls.begun).toBe(2);
  });
  test('ends with stop', () => {
    const { watch, watches, fix, fixes } = watching();
    watch.start();
    fix();
    watch.stop();
    expect(watch.state.get()).toBe('off');
    expect(watches.size).toBe(0);
    vi.advanceTimersByTime(5 * ANEW_MS);
    expect(watches.size).toBe(0);
    expect(fixes).toHaveLength(1);
  });
});

describe('a refusal', () => {
  test('ends the watch and is not asked about again by itself', () => {
    const { watch, fail, calls } = watching();
    watch.start();
    fail(1);
    expect(watch.state.get()).toBe('refused');
    vi.advanceTimersByTime(10 * ANEW_MS);
    calls.seen();
    expect(calls.begun).toBe(1);
  });
  test('is over when the person allows it in the settings, or asks again', () => {
    const { watch, fail, calls, fix } = watching();
    watch.start();
    fail(1);
    calls.permission('granted');
    expect(watch.state.get()).toBe('starting');
    fix();
    calls.permission('denied');
    expect(watch.state.get()).toBe('refused');
    watch.start();
    fix();
    expect(watch.state.get()).toBe('fixing');
  });
  test('a browser that throws has refused', () => {
    const { around } = surroundings();
    const watch = new PlaceWatch({ ...around, geolocation: {
      watchPosition() { throw new DOMException('not here', 'SecurityError'); }, clearWatch() {} } });
    watch.start();
    expect(watch.state.get()).toBe('refused');
  });
});
