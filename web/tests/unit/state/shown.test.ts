import { beforeAll, describe, expect, test } from 'vitest';
import type { AboutAnswer } from '../../../src/engine/answers';
import { fixed, Shower } from '../../../src/state/shown';
import { realEngine } from '../../engine';

let about: AboutAnswer;
beforeAll(async () => {
  const ask = await realEngine();
  about = ask({ question: 'about' }) as AboutAnswer;
});

describe('fixed', () => {
  test('rounds as C does, ties to the even digit', () => {
    expect(fixed(87.5, 0)).toBe('88');
    expect(fixed(88.5, 0)).toBe('88');
    expect(fixed(0.25, 1)).toBe('0.2');
    expect(fixed(0.75, 1)).toBe('0.8');
    expect(fixed(-2.5, 0)).toBe('-2');
    expect(fixed(2.675, 2)).toBe('2.67');
  });
  test('has no minus before nothing', () => {
    expect(fixed(-0.3, 0)).toBe('0');
    expect(fixed(-0.04, 1)).toBe('0.0');
  });
  test('what is no number is a dash', () => {
    expect(fixed(Number.NaN, 0)).toBe('-');
    expect(fixed(Infinity, 1)).toBe('-');
  });
});

describe('a band in words', () => {
  test('says both ends', () => {
    const shower = new Shower(about, 'feet');
    expect(shower.band({ median: 88 * 0.3048, low: 84 * 0.3048, high: 91 * 0.3048 }, 'depth'))
      .toBe('88 ft, 84 to 91');
  });
  test('without the tail when both ends look like the median', () => {
    const shower = new Shower(about, 'metric');
    expect(shower.band({ median: 20, low: 19.99, high: 20.01 }, 'depth')).toBe('20.0 m');
  });
  test('large forces go without digits after the point', () => {
    const shower = new Shower(about, 'feet');
    expect(shower.quantity(20, 'force')).toBe('4.5 lb');
    expect(shower.quantity(60, 'force')).toBe('13 lb');
  });
});
