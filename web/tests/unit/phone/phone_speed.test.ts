import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Fix } from '../../../src/phone/fix';
import type { PlaceWatch, WatchState } from '../../../src/phone/geolocation';
import { LOST_MS, OLD_MS, SpeedKeeper } from '../../../src/phone/phone_speed';
import type { AppState } from '../../../src/state/app';
import { usualHand } from '../../../src/state/hand';
import type { Hand } from '../../../src/state/sea';
import type { Shower } from '../../../src/state/shown';
import { Store } from '../../../src/state/store';

beforeEach(() => { vi.useFakeTimers(); });
afterEach(() => { vi.useRealTimers(); });

/** A page and a phone, without either. */
function page(usePhone: boolean) {
  const said: string[] = [];
  const state = new Store<AppState>({
    rigs: [], activeRig: '', hand: { ...usualHand(), usePhone },
    settings: { units: 'feet', look: 'day', keepAwake: false }, ground: null, notice: null,
  });
  const app = {
    state,
    say(words: string) { said.push(words); state.change({ notice: { words } }); },
    shower: { quantity: (si: number) => `${si.toFixed(2)} m/s` } as unknown as Shower,
  };
  const listeners: ((fix: Fix) => void)[] = [];
  const watchState = new Store<WatchState>('off');
  const watch = {
    state: watchState,
    listen: (listener: (fix: Fix) => void) => { listeners.push(listener); return () => {}; },
    start: () => watchState.set('starting'),
    stop: () => watchState.set('off'),
  } as unknown as PlaceWatch;
  let time = 100_000;
  const keeper = new SpeedKeeper(app, watch, () => time);
  const pass = (ms: number): void => {
    for (let left = ms; left > 0; left -= 500) { time += 500; vi.advanceTimersByTime(500); }
  };
  /** A fix each second at 1.2 m/s on 40 degrees. */
  const sail = (seconds: number): void => {
    for (let i = 0; i < seconds; i += 1) {
      pass(1000);
      watchState.set('fixing');
      for (const listener of listeners) {
        listener({ at_ms: time, latitude_deg: 47 + time * 1e-9, longitude_deg: -123, accuracy_m: 5,
          speed_mps: 1.2, heading_deg: 40 });
      }
    }
  };
  /** A fix off a network. */
  const roughFix = (): void => {
    for (const listener of listeners) {
      listener({ at_ms: (time += 1000), latitude_deg: 47, longitude_deg: -123, accuracy_m: 900,
        speed_mps: null, heading_deg: null });
    }
  };
  const hand = (patch: Partial<Hand>): void => state.change({ hand: { ...state.get().hand, ...patch } });
  return { app, state, keeper, watchState, pass, sail, roughFix, hand, said, now: () => time };
}

describe('the phone’s speed', () => {
  test('is not asked for while the hand’s is used', () => {
    const { watchState, state, pass } = page(false);
    pass(60_000);
    expect(watchState.get()).toBe('off');
    expect(state.get().ground).toBeNull();
  });
  test('goes to where the questions are asked from', () => {
    const { state, sail, now } = page(true);
    sail(5);
    expect(state.get().ground).toMatchObject({ at_ms: now(), old: false });
    expect(state.get().ground?.speed_mps).toBeCloseTo(1.2);
    expect(state.get().ground?.course_deg).toBeCloseTo(40);
    expect(state.get().ground?.accuracy_mps).toBeGreaterThan(0.01);
  });
  test('starts and ends with the switch', () => {
    const { state, sail, hand, watchState } = page(false);
    hand({ usePhone: true });
    expect(watchState.get()).toBe('starting');
    sail(3);
    expect(state.get().ground).not.toBeNull();
    hand({ usePhone: false });
    expect(state.get().ground).toBeNull();
    expect(watchState.get()).toBe('off');
  });
  test('is watched for somebody else without being used', () => {
    const { state, sail, keeper, watchState } = page(false);
    keeper.want('run', true);
    sail(3);
    expect(keeper.state.get()).toMatchObject({ fresh: 'fresh', watch: 'fixing' });
    expect(state.get().ground).toBeNull();
    keeper.want('run', false);
    expect(watchState.get()).toBe('off');
  });
  test('is none, and called rough, off a network', () => {
    const { keeper, state, roughFix, sail } = page(true);
    roughFix();
    expect(keeper.state.get()).toMatchObject({ rough: true, velocity: null });
    expect(state.get().ground).toBeNull();
    sail(2);
    expect(keeper.state.get().rough).toBe(false);
    expect(state.get().ground).not.toBeNull();
  });
  test('is there at once when the switch goes on meanwhile', () => {
    const { state, sail, keeper, hand } = page(false);
    keeper.want('run', true);
    sail(3);
    hand({ usePhone: true });
    expect(state.get().ground?.speed_mps).toBeCloseTo(1.2);
  });
});

describe('when the fixes stay away', () => {
  test('the speed is called old, then is none; said once', () => {
    const { state, sail, pass, said, keeper } = page(true);
    sail(5);
    pass(OLD_MS);
    expect(state.get().ground?.old).toBe(false);
    pass(1000);
    expect(state.get().ground?.old).toBe(true);
    pass(LOST_MS - OLD_MS - 2000);
    expect(state.get().ground?.old).toBe(true);
    expect(said).toEqual([]);
    pass(3000);
    expect(state.get().ground).toBeNull();
    expect(keeper.state.get().fresh).toBe('lost');
    pass(120_000);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/no fix for 20 s.*By hand: 1\.21 m\/s through the water/);
  });
  test('they may come back: the speed is theirs again, and the words go', () => {
    const { state, sail, pass, said } = page(true);
    sail(5);
    pass(40_000);
    expect(state.get().notice?.words).toBe(said[0]);
    sail(2);
    expect(state.get().ground).toMatchObject({ old: false });
    expect(state.get().notice).toBeNull();
    pass(40_000);
    expect(said).toHaveLength(2);
  });
  test('words of others are left standing', () => {
    const { state, app, sail, pass } = page(true);
    sail(5);
    pass(40_000);
    app.say('Something else.');
    sail(2);
    expect(state.get().notice?.words).toBe('Something else.');
  });
  test('a first fix that does not come is said once', () => {
    const { pass, said } = page(true);
    pass(25_000);
    expect(said).toEqual([]);
    pass(60_000);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/no fix yet/);
  });
  test('a refusal is said at once', () => {
    const { watchState, said } = page(true);
    watchState.set('refused');
    expect(said).toEqual([expect.stringMatching(/refused.*By hand/)]);
  });
});
