// Where things stand in the drawing of depth against count: one scale for both.
import type { Shower } from '../state/shown';
import type { Row } from './compare_rows';

const LEFT = 44;
const RIGHT = 26;
const TOP = 42;
const BOTTOM = 14;
/** Two letters may not be nearer, px. */
const APART = 17;

export interface Plot {
  /** px to the metre. */
  scale: number;
  height: number;
  right: number;
  bottom: number;
  x(count_m: number): number;
  y(depth_m: number): number;
  /** Where the diagonal leaves the drawing. */
  plumb: [x: number, y: number];
}

export function plotOf(rows: Pick<Row, 'curve'>[], deepest_m: number, width: number): Plot {
  const right = width - RIGHT;
  const scale = Math.max(0, right - LEFT) / Math.max(deepest_m, 1);
  const lowest_m = Math.max(1, ...rows.flatMap(({ curve }) => curve.map(([, depth]) => depth)));
  const bottom = TOP + (lowest_m * scale) + 10;
  const edge_m = Math.min(deepest_m, (bottom - TOP) / (scale || 1));
  return {
    scale, right, bottom, height: bottom + BOTTOM,
    x: (count_m) => LEFT + count_m * scale,
    y: (depth_m) => TOP + depth_m * scale,
    plumb: [LEFT + edge_m * scale, TOP + edge_m * scale],
  };
}

/** Round values in the shown unit, as far apart as their numbers need. */
export function rulings(deepest_m: number, scale: number, shower: Shower): { at_m: number; text: string }[] {
  if (!(scale > 0)) return [];
  const least = 44 / scale / shower.rule('depth').si;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = ([1, 2, 5, 10].find((digit) => digit * power >= least) ?? 10) * power;
  const marks = [];
  for (let i = 0; ; i += 1) {
    const at_m = shower.fromUnit(i * step, 'depth');
    if (at_m > deepest_m + 1e-6) return marks;
    marks.push({ at_m, text: String(Number((i * step).toFixed(3))) });
  }
}

/** The same heights, moved apart where letters would touch; their order stays. */
export function spread(heights: readonly number[]): number[] {
  const order = heights.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y);
  const placed = new Array<number>(heights.length).fill(0);
  let last = -Infinity;
  for (const { y, i } of order) {
    last = Math.max(y, last + APART);
    placed[i] = last;
  }
  return placed;
}
