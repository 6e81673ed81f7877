// The legs of a two-way run as they are kept, and what is asked of the engine with them.
import type { UnitChoice } from '../../engine/answers';
import type { Leg, TwoWayRequest } from '../../engine/requests';

export interface KeptLeg extends Omit<Leg, 'course_deg'> {
  course_deg: number;
  by: 'phone' | 'hand';
  /** Gaps within it, s. */
  left_out_s: number;
  /** By the wall clock, ms: which run this was. */
  ended_ms: number;
}

export type Legs = readonly [KeptLeg | null, KeptLeg | null];

/** An hour or two later the current is another, ms. Judgement. */
const KEPT_MS = 2 * 3600 * 1000;
const KEY = 'offplumb-two-way';
const FORMAT = 'offplumb-two-way-1';

export type Place = Pick<globalThis.Storage, 'getItem' | 'setItem' | 'removeItem'>;

export function requestOf(legs: Legs, units: UnitChoice): TwoWayRequest | undefined {
  const [first, second] = legs;
  if (!first || !second) return undefined;
  return { question: 'two_way', legs: [asLeg(first), asLeg(second)], units };
}

function asLeg({ ground_speed_mps, course_deg, heading_deg, log_mps, seconds, spread_mps }: KeptLeg): Leg {
  return { ground_speed_mps, course_deg, heading_deg, log_mps, seconds, spread_mps };
}

/** Keeps the legs over a reload of the page. A browser that keeps nothing loses them with it. */
export function keepLegs(place: Place | undefined, legs: Legs): void {
  try {
    if (legs.every((leg) => leg === null)) place?.removeItem(KEY);
    else place?.setItem(KEY, JSON.stringify({ format: FORMAT, legs }));
  } catch {
    // The run is still here, only not after a reload.
  }
}

/** Legs of the last two hours; none when nothing readable is there. */
export function keptLegs(place: Place | undefined, now_ms: number): Legs {
  try {
    const value: unknown = JSON.parse(place?.getItem(KEY) ?? 'null');
    const { format, legs } = (value ?? {}) as { format?: string; legs?: unknown };
    if (format !== FORMAT || !Array.isArray(legs)) return [null, null];
    const recent = legs.map((leg: unknown) => (isLeg(leg) && isRecent(leg, now_ms) ? leg : null));
    return [recent[0] ?? null, recent[1] ?? null];
  } catch {
    return [null, null];
  }
}

function isRecent(leg: KeptLeg, now_ms: number): boolean {
  return Math.abs(now_ms - leg.ended_ms) < KEPT_MS;
}

function isLeg(value: unknown): value is KeptLeg {
  if (typeof value !== 'object' || value === null) return false;
  const leg = value as Record<keyof KeptLeg, unknown>;
  const number = (x: unknown): boolean => typeof x === 'number' && Number.isFinite(x);
  return [leg.ground_speed_mps, leg.course_deg, leg.seconds, leg.left_out_s, leg.ended_ms].every(number) &&
    [leg.heading_deg, leg.log_mps, leg.spread_mps].every((x) => x === null || number(x)) &&
    (leg.by === 'phone' || leg.by === 'hand');
}
