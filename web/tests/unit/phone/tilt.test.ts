import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { leanOf, SILENT_MS, TiltReader, type TiltSurroundings, type Turn } from '../../../src/phone/tilt';

beforeEach(() => { vi.useFakeTimers(); });
afterEach(() => { vi.useRealTimers(); });

function device(options: Partial<TiltSurroundings> = {}) {
  let time = 0;
  let listener: ((turn: Turn) => void) | undefined;
  const around: TiltSurroundings = {
    available: true, ask: undefined, longEdge: () => 'y', now_ms: () => time,
    listen: (turned) => { listener = turned; return () => { listener = undefined; }; },
    ...options,
  };
  const turn = (beta: number | null, gamma: number | null, times = 1): void => {
    for (let i = 0; i < times; i += 1) {
      time += 20;
      vi.advanceTimersByTime(20);
      listener?.({ beta, gamma });
    }
  };
  return { reader: new TiltReader(around), turn, listens: () => listener !== undefined };
}

describe('the lean of an edge', () => {
  test.each([
    ['lying on its back', 0, 0, 90], ['upright', 90, 0, 0], ['upside down', -90, 0, 0],
    ['leaning back by 30', 60, 0, 30], ['leaning forward by 30', 120, 0, 30],
    ['upright, turned about itself', 90, 40, 0], ['on its side', 0, 90, 90],
    ['on its back, rolled', 20, 80, 70],
  ])('long edge: %s', (_, beta, gamma, lean) => {
    expect(leanOf(beta, gamma, 'y')).toBeCloseTo(lean, 9);
  });
  test.each([
    ['on its left side', 0, -90, 0], ['lying', 0, 0, 90], ['half rolled', 0, 45, 45],
    ['upright', 90, 0, 90],
  ])('short edge: %s', (_, beta, gamma, lean) => {
    expect(leanOf(beta, gamma, 'x')).toBeCloseTo(lean, 9);
  });
  test('both edges and the screen make a whole: the three cosines squared are one', () => {
    for (let beta = -170; beta < 180; beta += 23) {
      for (let gamma = -80; gamma < 90; gamma += 17) {
        const cos = (deg: number): number => Math.cos((deg * Math.PI) / 180);
        const screen = cos(beta) * cos(gamma);
        const sum = cos(leanOf(beta, gamma, 'x')) ** 2 + cos(leanOf(beta, gamma, 'y')) ** 2 + screen ** 2;
        expect(sum).toBeCloseTo(1, 9);
      }
    }
  });
});

describe('the reader', () => {
  test('reads and smooths', async () => {
    const { reader, turn } = device();
    await reader.start();
    expect(reader.state.get()).toEqual({ state: 'waiting', lean: null });
    turn(60, 0, 200);
    expect(reader.state.get().state).toBe('reading');
    expect(reader.state.get().lean?.angle_deg).toBeCloseTo(30, 6);
    expect(reader.state.get().lean?.spread_deg).toBeCloseTo(0, 6);
    turn(50, 0);
    expect(reader.state.get().lean?.angle_deg).toBeLessThan(31);
    turn(50, 0, 300);
    expect(reader.state.get().lean?.angle_deg).toBeCloseTo(40, 1);
  });
  test('tells how much it moves about', async () => {
    const { reader, turn } = device();
    await reader.start();
    for (let i = 0; i < 400; i += 1) turn(60 + 5 * Math.sin(i), 0);
    expect(reader.state.get().lean?.spread_deg).toBeGreaterThan(2.5);
    expect(reader.state.get().lean?.spread_deg).toBeLessThan(5);
    expect(Math.abs((reader.state.get().lean?.angle_deg ?? 0) - 30)).toBeLessThan(1);
  });
  test('a device without a level is silent, not zero', async () => {
    const { reader, turn } = device();
    await reader.start();
    turn(null, null);
    vi.advanceTimersByTime(SILENT_MS + 10);
    expect(reader.state.get()).toEqual({ state: 'silent', lean: null });
  });
  test('asks where it must, and takes no for an answer', async () => {
    const ask = vi.fn(async () => 'denied' as const);
    const { reader, listens } = device({ ask });
    const started = reader.start();
    expect(reader.state.get().state).toBe('asking');
    await started;
    expect(reader.state.get()).toEqual({ state: 'refused', lean: null });
    expect(listens()).toBe(false);
  });
  test('a question that fails is a refusal', async () => {
    const { reader } = device({ ask: () => Promise.reject(new Error('no tap')) });
    await reader.start();
    expect(reader.state.get().state).toBe('refused');
  });
  test('reads after a yes, and stops', async () => {
    const { reader, turn, listens } = device({ ask: async () => 'granted' as const });
    await reader.start();
    turn(90, 0, 5);
    expect(reader.state.get().lean?.angle_deg).toBeCloseTo(0, 9);
    reader.stop();
    expect(listens()).toBe(false);
    expect(reader.state.get()).toEqual({ state: 'off', lean: null });
    vi.advanceTimersByTime(10 * SILENT_MS);
    expect(reader.state.get().state).toBe('off');
  });
  test('is missing where the browser has none', async () => {
    const { reader, listens } = device({ available: false });
    await reader.start();
    expect([reader.state.get().state, listens()]).toEqual(['missing', false]);
  });
  test('a wide tablet is read by its own long edge', async () => {
    const { reader, turn } = device({ longEdge: () => 'x' });
    await reader.start();
    turn(0, 60, 3);
    expect(reader.state.get().lean?.angle_deg).toBeCloseTo(30, 9);
  });
});
