// What the person holds in hand while fishing: counts, speed, balls, the current. Plain values.
import type { Sea } from '../engine/requests';

/** The current at a depth, as the person in the boat sees it. */
export interface CurrentPoint {
  depth_m: number;
  /** Running the boat's way (positive) or against it. */
  along_mps: number;
  /** Running toward starboard (positive) or port. */
  across_mps: number;
}

/** The latest of the phone's own speed; none when it is not used or not known. */
export interface GroundSpeed {
  speed_mps: number;
  /** Clockwise from true north; unknown when the boat hardly moves. */
  course_deg: number | null;
  /** When it was measured, by the steady clock (phone/steady_clock.ts), ms. */
  at_ms?: number;
  /** The speed is right to within this, nine times in ten, m/s. */
  accuracy_mps?: number;
  /** No fix for some seconds: to be shown with its age. */
  old?: boolean;
}

export interface Hand {
  /** Through the water, set by hand. */
  speed_mps: number;
  /** The phone's speed over ground is used instead, when it is known. */
  usePhone: boolean;
  /** By rigger, as its counter reads. */
  counts_m: Record<string, number>;
  /** By rigger; one that is not here has the ball of its rig. */
  balls_kg: Record<string, number>;
  /** The rigger that the fingers move. */
  rigger: string;
  wanted: { depth_m: number; of: 'ball' | 'lure' };
  current: CurrentPoint[];
  /** Under the boat, off a sounder or a chart; not known: null. */
  bottom_m: number | null;
  water: 'salt' | 'fresh';
}

export const STILL: CurrentPoint = { depth_m: 0, along_mps: 0, across_mps: 0 };

/** Fresh water of a cool lake. Salt water is the engine's own default. */
const FRESH = { temperature_C: 10, salinity_g_per_kg: 0 };

function degrees(rad: number): number {
  return ((rad * 180) / Math.PI + 360) % 360;
}

/** The course that is taken where none is known: only angles to it matter then. */
const ANY_COURSE = 0;

function currentOf(points: CurrentPoint[], course_deg: number): Sea['current'] {
  if (points.every((p) => p.along_mps === 0 && p.across_mps === 0)) return null;
  return {
    shape: 'linear',
    points: points.map((p) => ({
      depth_m: p.depth_m,
      speed_mps: Math.hypot(p.along_mps, p.across_mps),
      toward_deg: (course_deg + degrees(Math.atan2(p.across_mps, p.along_mps))) % 360,
    })),
  };
}

/** The same sea as the engine is asked about it. */
export function seaOf(hand: Hand, ground: GroundSpeed | null): Sea {
  const water = hand.water === 'fresh' ? FRESH : null;
  const overGround = hand.usePhone && ground !== null;
  const course_deg = (overGround ? ground.course_deg : null) ?? ANY_COURSE;
  const current = currentOf(hand.current, course_deg);
  if (overGround) {
    return { speed_kind: 'over_ground', speed_mps: ground.speed_mps, course_deg,
      heading_deg: course_deg, current, water };
  }
  return { speed_kind: 'through_water', speed_mps: hand.speed_mps, heading_deg: course_deg, current,
    water };
}
