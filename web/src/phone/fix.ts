// A fix as the phone gives it, and how far it is from one to the next.

/** North and east, m or m/s. */
export interface Vector {
  north: number;
  east: number;
}

export interface Fix {
  /** When it was made, by the steady clock, ms. */
  at_ms: number;
  latitude_deg: number;
  longitude_deg: number;
  /** The place is right to within this, 19 times in 20 (W3C, Geolocation, from memory). */
  accuracy_m: number;
  /** As the receiver measures it; most phones do, some computers do not. */
  speed_mps: number | null;
  /** The way over ground; none while it stands still. */
  heading_deg: number | null;
}

/** Mean radius of the earth, IUGG, from memory. Steps of a boat are short enough for a sphere. */
const EARTH_M = 6_371_009;
const RAD = Math.PI / 180;

export function isSound(fix: Fix): boolean {
  return [fix.at_ms, fix.latitude_deg, fix.longitude_deg, fix.accuracy_m].every(Number.isFinite) &&
    Math.abs(fix.latitude_deg) <= 90 && fix.accuracy_m >= 0;
}

/** From one place to another. */
export function stepBetween(from: Fix, to: Fix): Vector {
  const middle = ((from.latitude_deg + to.latitude_deg) / 2) * RAD;
  // The short way round, also across the date line.
  const turn = ((to.longitude_deg - from.longitude_deg + 540) % 360) - 180;
  return {
    north: (to.latitude_deg - from.latitude_deg) * RAD * EARTH_M,
    east: turn * RAD * EARTH_M * Math.cos(middle),
  };
}

export function vectorOf(size: number, bearing_deg: number): Vector {
  return { north: size * Math.cos(bearing_deg * RAD), east: size * Math.sin(bearing_deg * RAD) };
}

export function sizeOf(v: Vector): number {
  return Math.hypot(v.north, v.east);
}

/** Clockwise from north, 0 to 360. */
export function bearingOf(v: Vector): number {
  return (Math.atan2(v.east, v.north) / RAD + 360) % 360;
}

/** \p a plus \p part of \p b. */
export function plus(a: Vector, b: Vector, part = 1): Vector {
  return { north: a.north + part * b.north, east: a.east + part * b.east };
}

/** Between two bearings, 0 to 180. */
export function apart(a_deg: number, b_deg: number): number {
  return Math.abs(((a_deg - b_deg + 540) % 360) - 180);
}
