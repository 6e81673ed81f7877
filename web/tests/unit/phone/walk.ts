// Walks of a boat as a phone would tell them, with noise that is the same at every run.
import type { Fix } from '../../../src/phone/fix';

/** A small generator of even numbers in [0, 1) (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function normal(even: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
}

export interface Walk {
  seconds: number;
  /** True speed and course at a time. */
  way(t_s: number): { speed_mps: number; course_deg: number };
  /** Scatter of the receiver's own speed, each way, m/s; null: it tells none. */
  own_mps: number | null;
  /** Scatter of the place, each way, and for how long its error lasts. */
  place_m: number;
  lasts_s: number;
  accuracy_m: number;
  seed: number;
}

const METRE_DEG = 180 / Math.PI / 6_371_009;
const START = { latitude: 47.3, longitude: -123.2 };

/** A fix each second. */
export function walk({ seconds, way, own_mps, place_m, lasts_s, accuracy_m, seed }: Walk): Fix[] {
  const even = seeded(seed);
  const fixes: Fix[] = [];
  let [north, east] = [0, 0];
  let error = { north: place_m * normal(even), east: place_m * normal(even) };
  const keep = Math.exp(-1 / lasts_s);
  for (let t = 0; t <= seconds; t += 1) {
    const { speed_mps, course_deg } = way(t);
    const v = { north: speed_mps * Math.cos(course_deg * Math.PI / 180),
      east: speed_mps * Math.sin(course_deg * Math.PI / 180) };
    if (t > 0) { north += v.north; east += v.east; }
    const fresh = place_m * Math.sqrt(1 - keep * keep);
    error = { north: keep * error.north + fresh * normal(even),
      east: keep * error.east + fresh * normal(even) };
    const own = own_mps === null ? null
      : { north: v.north + own_mps * normal(even), east: v.east + own_mps * normal(even) };
    const latitude_deg = START.latitude + (north + error.north) * METRE_DEG;
    fixes.push({
      at_ms: 1000 * t,
      latitude_deg,
      longitude_deg: START.longitude +
        ((east + error.east) * METRE_DEG) / Math.cos(START.latitude * Math.PI / 180),
      accuracy_m,
      speed_mps: own && Math.hypot(own.north, own.east),
      heading_deg: own && (Math.atan2(own.east, own.north) * 180 / Math.PI + 360) % 360,
    });
  }
  return fixes;
}
