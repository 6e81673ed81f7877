// Changing the current's profile by hand. A profile keeps its points in order of depth; the first is
// at the surface and stays there.
import { STILL, type CurrentPoint } from './sea';

/** Two points may not be nearer, m. */
export const APART_M = 1;
export const MOST_POINTS = 8;

export function movePoint(points: CurrentPoint[], index: number, to: CurrentPoint): CurrentPoint[] {
  const above = points[index - 1];
  const below = points[index + 1];
  const least = above ? above.depth_m + APART_M : 0;
  const most = index === 0 ? 0 : below ? below.depth_m - APART_M : Infinity;
  const depth_m = Math.max(least, Math.min(most, to.depth_m));
  return points.map((point, i) => (i === index ? { ...to, depth_m } : point));
}

/** Adds a point below the chosen one: halfway to the next, or `deeper_m` below the last. */
export function addPoint(points: CurrentPoint[], index: number, deeper_m: number): CurrentPoint[] {
  const here = points[index] ?? STILL;
  const next = points[index + 1];
  const depth_m = next ? (here.depth_m + next.depth_m) / 2 : here.depth_m + deeper_m;
  if (next && next.depth_m - here.depth_m < 2 * APART_M) return points;
  const mean = (a: number, b: number | undefined): number => (b === undefined ? a : (a + b) / 2);
  const point = { depth_m, along_mps: mean(here.along_mps, next?.along_mps),
    across_mps: mean(here.across_mps, next?.across_mps) };
  return [...points.slice(0, index + 1), point, ...points.slice(index + 1)];
}

export function removePoint(points: CurrentPoint[], index: number): CurrentPoint[] {
  return index === 0 ? points : points.filter((_, i) => i !== index);
}

/** The whole profile runs faster or slower by so much: the dial at the surface. */
export function shiftAlong(points: CurrentPoint[], surface_mps: number): CurrentPoint[] {
  const change = surface_mps - (points[0]?.along_mps ?? 0);
  return points.map((point) => ({ ...point, along_mps: point.along_mps + change }));
}
