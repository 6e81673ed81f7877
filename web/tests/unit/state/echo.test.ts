import { beforeAll, expect, test } from 'vitest';
import type { AboutAnswer } from '../../../src/engine/answers';
import { echo, headNumber } from '../../../src/state/echo';
import { Shower } from '../../../src/state/shown';
import { realEngine } from '../../engine';

const FOOT = 0.3048;
const MPH = 0.44704;
let shower: Shower;
beforeAll(async () => {
  const ask = await realEngine();
  shower = new Shower(ask({ question: 'about' }) as AboutAnswer, 'feet');
});

test('what was given is repeated with its own digits', () => {
  expect(echo(shower, 90 * FOOT, 'depth')).toBe('90 ft');
  expect(echo(shower, 92.5 * FOOT, 'depth')).toBe('92.5 ft');
  expect(echo(shower, 2.75 * MPH, 'speed')).toBe('2.75 mph');
  expect(echo(shower, 3 * MPH, 'speed')).toBe('3 mph');
});

test('heads have the usual digits, and more where they are needed', () => {
  expect(headNumber(shower, 3 * MPH, 'speed')).toBe('3.0');
  expect(headNumber(shower, 2.75 * MPH, 'speed')).toBe('2.75');
  expect(headNumber(shower, 2.2 * MPH, 'speed')).toBe('2.2');
  expect(headNumber(shower, 92.5 * FOOT, 'depth')).toBe('92.5');
});
