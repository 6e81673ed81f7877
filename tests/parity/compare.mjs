// Comparing two answers key by key.

/**
 * How far a number may differ, relative to its size or to 1 (SI), whichever is larger.
 *
 * Plus, minus, times, divide and square root agree to the last bit on both; sine, exponential and
 * their kin differ in the last bits (2^-52 = 2.2e-16). The mesh is fixed by the request, so a last bit
 * changes no step. What is left is the solver's own stopping: it ends within 1e-9 of the line
 * (engine/tow, tolerance) and its last step is then far below that; a bound of 1e-9 of a length of
 * 100 m is 1e-7 m. A search for a count ends within 1e-6 m (engine/plan kCountTolerance_m), and where
 * it stops may differ by as much. So 2e-6. Seen: 1.3e-8 in one count, whose search ends elsewhere within
 * its tolerance, and below 7e-12 in all else. The test prints what it sees.
 */
export const TOLERANCE = 2e-6;

/** Points of a shape are rounded to the millimetre before they are written: one unit may tip over. */
const SHAPE_TOLERANCE = 1.001e-3;

function toleranceAt(path) {
  return /\.shape\.|\.sheet\./.test(path) ? SHAPE_TOLERANCE : TOLERANCE;
}

/** Calls `report(path, words)` for each difference; \return the largest relative one seen. */
export function compare(a, b, report, path = '') {
  if (typeof a === 'number' && typeof b === 'number') return compareNumbers(a, b, report, path);
  if (typeof a !== typeof b || a === null || b === null || typeof a !== 'object') {
    if (a !== b) report(path, `${JSON.stringify(a)} and ${JSON.stringify(b)}`);
    return 0;
  }
  const keys = Object.keys(a);
  if (keys.join() !== Object.keys(b).join()) {
    report(path, `keys ${keys.join()} and ${Object.keys(b).join()}`);
    return 0;
  }
  let worst = 0;
  for (const key of keys) worst = Math.max(worst, compare(a[key], b[key], report, `${path}.${key}`));
  return worst;
}

function compareNumbers(a, b, report, path) {
  const difference = Math.abs(a - b) / Math.max(1, Math.abs(a), Math.abs(b));
  if (!(difference <= toleranceAt(path))) report(path, `${a} and ${b}`);
  return /\.shape\.|\.sheet\./.test(path) ? 0 : difference;
}
