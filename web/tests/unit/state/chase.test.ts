import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { CutOff, type Desk } from '../../../src/engine/desk';
import type { CountRequest } from '../../../src/engine/requests';
import { Chase, ROUGH_THEN_FULL, FULL_ONLY, NO_BANDS, type Chased, type Wishes } from '../../../src/state/chase';
import type { CountAnswer } from '../../../src/engine/answers';

// The compiled engine is not needed here.
vi.mock('../../../src/engine/source', () => ({ EngineCannotStart: class extends Error {} }));

type Asked = Pick<CountRequest, 'depth_m' | 'bands' | 'draws' | 'rigger'>;

/** A desk whose answers are given by hand, and repeat what was asked. */
class SlowDesk {
  quick: { requests: Asked[]; answer(): void; fail(error: Error): void }[] = [];
  slow: { key: string; request: Asked; answer(): void; refuse(): void; cutOff(): void }[] = [];

  private static outcome(request: Asked) {
    return request.depth_m > 100
      ? { question: 'count', problem: { kind: 'bad_input', subject: 'depth', message: 'Too deep.',
        remedy: 'Less.', line: 0, path: null } }
      : { question: 'count', inputs: { ...request }, riggers: [], cautions: [], notes: [] };
  }

  askAll = vi.fn((requests: Asked[]) => new Promise((resolve, reject) => {
    this.quick.push({
      requests,
      answer: () => resolve({ outcomes: requests.map((r) => SlowDesk.outcome(r)), solve_ms: 1 }),
      fail: reject,
    });
  }));

  askSlowly = vi.fn((key: string, request: Asked) => new Promise((resolve, reject) => {
    this.slow.push({ key, request,
      answer: () => resolve(SlowDesk.outcome(request)),
      refuse: () => resolve(SlowDesk.outcome({ ...request, depth_m: 1000 })),
      cutOff: () => reject(new CutOff()) });
  }));
}

function wish(name: string, depth_m: number): Wishes<CountRequest>[number] {
  return [name, { question: 'count', rig_toml: '', rigger: name, depth_m, of: 'ball', speed_mps: 1,
    bands: true, units: 'feet' }];
}

let desk: SlowDesk;
let views: Map<string, Chased<CountAnswer>>[];
const last = (name = 'port') => views.at(-1)?.get(name);
const asked = (name = 'port') => last(name)?.answer?.inputs['depth_m'];
const settle = () => vi.advanceTimersByTimeAsync(0);

function chase(stages: readonly number[]): Chase<CountRequest> {
  return new Chase<CountRequest>(desk as unknown as Desk, stages, (view) => views.push(view));
}

beforeEach(() => {
  vi.useFakeTimers();
  desk = new SlowDesk();
  views = [];
});
afterEach(() => vi.useRealTimers());

describe('while the finger drags', () => {
  test('one batch is on its way, and the latest wish wins', async () => {
    const it = chase(NO_BANDS);
    it.follow([wish('port', 10)]);
    it.follow([wish('port', 11)]);
    it.follow([wish('port', 12)]);
    expect(desk.quick.map(({ requests }) => requests[0]?.depth_m)).toEqual([10]);
    expect(desk.quick[0]?.requests[0]?.bands).toBe(false);
    desk.quick[0]?.answer();
    await settle();
    expect(desk.quick.map(({ requests }) => requests[0]?.depth_m)).toEqual([10, 12]);
    expect(asked()).toBe(10);
    expect(last()?.current).toBe(false);
    desk.quick[1]?.answer();
    await settle();
    expect(asked()).toBe(12);
    expect(last()).toMatchObject({ current: true, draws: 0, done: true });
    expect(desk.quick).toHaveLength(2);
  });

  test('only what changed is asked again', async () => {
    const it = chase(NO_BANDS);
    it.follow([wish('port', 10), wish('starboard', 10)]);
    desk.quick[0]?.answer();
    await settle();
    it.follow([wish('port', 10), wish('starboard', 11)]);
    expect(desk.quick[1]?.requests.map(({ rigger }) => rigger)).toEqual(['starboard']);
  });

  test('the same wishes are no news', async () => {
    const it = chase(NO_BANDS);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.answer();
    await settle();
    it.follow([wish('port', 10)]);
    expect(desk.quick).toHaveLength(1);
  });
});

describe('when the hand rests', () => {
  test('a rough band comes first, then the whole one, rigger by rigger', async () => {
    const it = chase(ROUGH_THEN_FULL);
    it.follow([wish('port', 10), wish('starboard', 20)]);
    desk.quick[0]?.answer();
    await vi.advanceTimersByTimeAsync(249);
    expect(desk.slow).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(1);
    for (let i = 0; i < 4; i += 1) {
      desk.slow[i]?.answer();
      await settle();
    }
    expect(desk.slow.map(({ request }) => [request.rigger, request.draws])).toEqual([
      ['port', 16], ['starboard', 16], ['port', undefined], ['starboard', undefined]]);
    expect(desk.slow.every(({ request }) => request.bands)).toBe(true);
    expect(last('port')).toMatchObject({ draws: 128, done: true });
    expect(last('starboard')).toMatchObject({ draws: 128, done: true });
  });

  test('a band that comes late is not shown for something else', async () => {
    const it = chase(FULL_ONLY);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.answer();
    await vi.advanceTimersByTimeAsync(250);
    it.follow([wish('port', 11)]);
    desk.quick[1]?.answer();
    await settle();
    desk.slow[0]?.answer();
    await settle();
    expect(asked()).toBe(11);
    expect(last()).toMatchObject({ draws: 0, done: false });
    await vi.advanceTimersByTimeAsync(250);
    expect(desk.slow[1]?.request.depth_m).toBe(11);
    desk.slow[1]?.answer();
    await settle();
    expect(last()).toMatchObject({ draws: 128, done: true });
  });

  test('one that is cut off for another question is asked again', async () => {
    const it = chase(FULL_ONLY);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.answer();
    await vi.advanceTimersByTimeAsync(250);
    desk.slow[0]?.cutOff();
    await vi.advanceTimersByTimeAsync(250);
    desk.slow[1]?.answer();
    await settle();
    expect(last()).toMatchObject({ draws: 128, done: true, problem: undefined });
  });

  test('nothing is asked after it is stopped', async () => {
    const it = chase(FULL_ONLY);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.answer();
    await settle();
    it.stop();
    await vi.advanceTimersByTimeAsync(1000);
    expect(desk.slow).toHaveLength(0);
  });
});

describe('what goes wrong', () => {
  test('is said, and the last good answer stays', async () => {
    const it = chase(FULL_ONLY);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.answer();
    await settle();
    it.follow([wish('port', 500)]);
    desk.quick[1]?.answer();
    await vi.advanceTimersByTimeAsync(1000);
    expect(last()).toMatchObject({ current: false, done: true, problem: { message: 'Too deep.' } });
    expect(asked()).toBe(10);
    expect(desk.slow).toHaveLength(0);
    it.follow([wish('port', 20)]);
    desk.quick[2]?.answer();
    await settle();
    expect(last()?.problem).toBeUndefined();
    expect(asked()).toBe(20);
  });

  test('a band that cannot be had leaves the median', async () => {
    const it = chase(FULL_ONLY);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.answer();
    await vi.advanceTimersByTimeAsync(250);
    desk.slow[0]?.refuse();
    await vi.advanceTimersByTimeAsync(1000);
    expect(last()).toMatchObject({ current: true, draws: 0, done: true, problem: { message: 'Too deep.' } });
    expect(desk.slow).toHaveLength(1);
  });

  test('an engine that stopped is said, and asked again for the next wish', async () => {
    const it = chase(NO_BANDS);
    it.follow([wish('port', 10)]);
    desk.quick[0]?.fail(new Error('The engine stopped.'));
    await settle();
    expect(last()?.problem).toMatchObject({ kind: 'fault', message: 'The engine stopped.' });
    it.follow([wish('port', 11)]);
    desk.quick[1]?.answer();
    await settle();
    expect(asked()).toBe(11);
  });
});
