// From fixes to readings of the boat's velocity: the receiver's own where it gives one, else the way
// from fix to fix. What cannot be a reading is named, not smoothed over.
import { isSound, stepBetween, vectorOf, type Fix, type Vector } from './fix';

/** One reading of the velocity over ground. */
export interface Reading {
  at_ms: number;
  /** Since the reading before, s; null: the first, or the first after a gap. */
  dt_s: number | null;
  velocity: Vector;
  from: 'receiver' | 'positions';
  /** Scatter that is to be expected of such a reading, each way, m/s. */
  scatter_mps: number;
  /** Of the place, each way, m. */
  place_m: number;
}

/** Why a fix gave no reading. */
export type Refused = 'unsound' | 'late' | 'rough' | 'same' | 'first';

/** Longer without a fix, and what was before says nothing of now, s. Judgement. */
export const GAP_S = 10;
/** A place no better than this is off a mast or a network, not off the sky, m. Judgement. */
export const ROUGH_M = 50;
/** A second copy of a fix is passed over for so long, s; then it is a boat that lies still. */
const SAME_S = 3;
/** Receivers that stand give a speed near none and no heading, m/s. Judgement. */
const STANDING_MPS = 0.3;
/**
 * Scatter of a receiver's own speed under open sky, m/s (the same as the engine takes for a two-way
 * run), and the accuracy of the place that goes with it, m. Judgement.
 */
const SPEED_SCATTER_MPS = 0.1;
const GOOD_PLACE_M = 10;
/** From the radius that holds 95 % of a plane normal distribution to the deviation each way. */
const RADIUS_95 = 2.448;
/** Fixes a second apart share their error but for this part. Judgement. */
const NEW_PART = 0.25;

export class Readings {
  private base: Fix | undefined;
  private lastReading_ms: number | undefined;

  /** A reading, or why there is none. */
  take(fix: Fix): Reading | Refused {
    if (!isSound(fix)) return 'unsound';
    const { base } = this;
    if (base && fix.at_ms <= base.at_ms) return 'late';
    if (fix.accuracy_m > ROUGH_M) return 'rough';
    const since_s = base ? (fix.at_ms - base.at_ms) / 1000 : Infinity;
    if (base && since_s < SAME_S && isCopy(base, fix)) return 'same';
    this.base = fix;
    const velocity = receiversOwn(fix);
    if (velocity) return this.fromReceiver(fix, velocity);
    return base && since_s <= GAP_S ? this.fromPositions(base, fix, since_s) : 'first';
  }

  private fromReceiver(fix: Fix, velocity: Vector): Reading {
    const scatter_mps = SPEED_SCATTER_MPS * Math.max(1, fix.accuracy_m / GOOD_PLACE_M);
    return this.noted({ at_ms: fix.at_ms, dt_s: this.sinceReading(fix), velocity, from: 'receiver',
      scatter_mps, place_m: fix.accuracy_m / RADIUS_95 });
  }

  private fromPositions(base: Fix, fix: Fix, dt_s: number): Reading {
    const step = stepBetween(base, fix);
    const place_m = Math.hypot(base.accuracy_m, fix.accuracy_m) / Math.SQRT2 / RADIUS_95;
    return this.noted({ at_ms: fix.at_ms, dt_s, from: 'positions', place_m,
      velocity: { north: step.north / dt_s, east: step.east / dt_s },
      scatter_mps: (NEW_PART * Math.SQRT2 * place_m) / dt_s });
  }

  private sinceReading(fix: Fix): number | null {
    if (this.lastReading_ms === undefined) return null;
    const dt_s = (fix.at_ms - this.lastReading_ms) / 1000;
    return dt_s > GAP_S ? null : dt_s;
  }

  private noted(reading: Reading): Reading {
    this.lastReading_ms = reading.at_ms;
    return reading;
  }
}

function isCopy(a: Fix, b: Fix): boolean {
  return a.latitude_deg === b.latitude_deg && a.longitude_deg === b.longitude_deg &&
    a.speed_mps === b.speed_mps && a.heading_deg === b.heading_deg;
}

/** Nothing where the receiver tells no speed, or a speed and not where to. */
function receiversOwn({ speed_mps, heading_deg }: Fix): Vector | undefined {
  if (speed_mps === null || !Number.isFinite(speed_mps) || speed_mps < 0) return undefined;
  if (heading_deg !== null && Number.isFinite(heading_deg)) return vectorOf(speed_mps, heading_deg);
  return speed_mps <= STANDING_MPS ? { north: 0, east: 0 } : undefined;
}
