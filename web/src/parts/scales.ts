// The scales of the rulers in each choice of units. Steps are what a person sets by hand.
import type { UnitChoice } from '../engine/answers';
import type { Scale } from './Ruler';

const FEET = { shown: 'depth', step: 1, label: 20, tick: 5, pxPerUnit: 5 } as const;
const METRES = { shown: 'depth', step: 0.5, label: 5, tick: 1, pxPerUnit: 16 } as const;

/** Counts and depths. \p most_m may be the line on the reel. */
export function depthScale(units: UnitChoice, least_m: number, most_m: number): Scale {
  const [rule, unit_m] = units === 'metric' ? [METRES, 1] as const : [FEET, 0.3048] as const;
  return { ...rule, min: Math.ceil(least_m / unit_m - 1e-6), max: Math.floor(most_m / unit_m + 1e-6) };
}

/** Speeds; trolling is at the slow end, but the engine answers up to its own limit. */
export function speedScale(units: UnitChoice): Scale {
  if (units === 'metric') {
    return { shown: 'speed', min: 0, max: 4.4, step: 0.05, label: 0.5, tick: 0.1, pxPerUnit: 240 };
  }
  const max = units === 'knots' ? 8.6 : 10;
  return { shown: 'speed', min: 0, max, step: 0.1, label: 0.5, tick: 0.1, pxPerUnit: 140 };
}

export function ballScale(units: UnitChoice, smallest_kg: number, largest_kg: number): Scale {
  if (units === 'metric') {
    return { shown: 'mass', min: smallest_kg, max: largest_kg, step: 0.5, label: 1, tick: 0.5, pxPerUnit: 60 };
  }
  const pound = 0.45359237;
  return { shown: 'mass', min: smallest_kg / pound, max: largest_kg / pound, step: 1, label: 2, tick: 1,
    pxPerUnit: 28 };
}

/** A current along or across, negative to one side. */
export function currentScale(units: UnitChoice): Scale {
  const most = units === 'metric' ? 1.5 : 3;
  return { shown: 'speed', min: -most, max: most, step: 0.1, label: 0.5, tick: 0.1, pxPerUnit: 140 };
}
