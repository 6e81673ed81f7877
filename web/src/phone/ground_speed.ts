// The boat's speed over ground from readings that scatter: smoothed as a vector, so that a course of
// 359 and one of 1 do not make 180, and waves that yaw the boat do not add speed.
import { bearingOf, plus, sizeOf, type Vector } from './fix';
import { GAP_S, type Reading } from './readings';

export interface GroundVelocity {
  at_ms: number;
  speed_mps: number;
  /** Clockwise from true north; null while the boat does not move clearly faster than it scatters. */
  course_deg: number | null;
  /** The speed is right to within this, nine times in ten, m/s. */
  accuracy_mps: number;
  from: Reading['from'];
}

/**
 * The smoothing's time constant, s. Waves make a boat surge and yaw every 2 to 5 s: 6 s brings that
 * down to a third or less, and a new throttle is shown within some 15 s, no later than the ball
 * takes to ride at its new depth. From positions alone each reading is much rougher and 15 s are
 * needed. In a steady turn the smoothed speed runs behind and reads low. Judgement.
 */
export const SMOOTHING_S = { receiver: 6, positions: 15 } as const;
/** A receiver's own readings closer than this share their error, s (as the engine takes it). */
const SHARED_S = 10;
/** How many readings the expected scatter is worth, and how many the scatter seen looks back. */
const EXPECTED_WEIGHT = 10;
const SEEN_READINGS = 20;
/** A reading further off than so many scatters, and what a boat may gain in the time, is refused. */
const REFUSE_SCATTERS = 4;
const GAIN_MPS2 = 0.5;
/** So many refused in a row are no slips: the boat does go otherwise. Judgement. */
const REFUSED_RUN = 4;
/** From a deviation to the half width that holds nine in ten. */
const NINE_IN_TEN = 1.645;
/** Without a way to go by, the scatter both ways makes speed: the same for a plane, 2.146. */
const STILL_FACTOR = 2.146 / NINE_IN_TEN;
/** A speed known no better than this is not told, m/s (1.5 mph). Judgement. */
export const ROUGHEST_MPS = 0.7;
/** A course is told from so many accuracies of speed on, and until it falls below the second. */
const COURSE_FROM = 2;
const COURSE_UNTIL = 1.5;

export class GroundFilter {
  private velocity: Vector = { north: 0, east: 0 };
  private last: Reading | undefined;
  /** Readings since the start, or since what was before stopped counting. */
  private count = 0;
  private over_s = 0;
  private seen = { squares: 0, weight: 0 };
  private refused: Reading[] = [];
  private courseKnown = false;

  /** Takes a reading in. False: it lies too far off to be believed. */
  take(reading: Reading): boolean {
    const gap = this.last ? (reading.at_ms - this.last.at_ms) / 1000 : Infinity;
    if (reading.dt_s === null || gap > GAP_S) this.restart();
    const believed = this.count === 0 || this.judge(reading, gap);
    if (believed) {
      this.refused = [];
      this.add(reading, this.count === 0 ? reading.dt_s ?? 0 : gap);
    } else {
      this.refused.push(reading);
      if (this.refused.length >= REFUSED_RUN) this.followRefused();
    }
    return believed;
  }

  /** The speed now; null before it is known well enough. */
  now(): GroundVelocity | null {
    const { last } = this;
    if (!last || this.count === 0) return null;
    const speed_mps = sizeOf(this.velocity);
    const error_mps = NINE_IN_TEN * this.error(last);
    this.courseKnown = speed_mps > (this.courseKnown ? COURSE_UNTIL : COURSE_FROM) * error_mps;
    const accuracy_mps = this.courseKnown ? error_mps : STILL_FACTOR * error_mps;
    if (!(accuracy_mps <= ROUGHEST_MPS)) return null;
    const course_deg = this.courseKnown ? bearingOf(this.velocity) : null;
    return { at_ms: last.at_ms, speed_mps, course_deg, accuracy_mps, from: last.from };
  }

  private restart(): void {
    this.count = 0;
    this.over_s = 0;
    this.refused = [];
  }

  private add(reading: Reading, dt_s: number): void {
    this.count += 1;
    this.over_s += dt_s;
    // The first ones count alike; then each new one as the time constant has it.
    const part = Math.max(1 - Math.exp(-dt_s / SMOOTHING_S[reading.from]), 1 / this.count);
    this.velocity = plus(this.velocity, offFrom(this.velocity, reading), part);
    this.last = reading;
  }

  private judge(reading: Reading, dt_s: number): boolean {
    const off = sizeOf(offFrom(this.velocity, reading));
    const limit = REFUSE_SCATTERS * this.scatter(reading) + GAIN_MPS2 * dt_s;
    // One that is refused counts as if it stood at the limit: in rough water the limit widens.
    const square = Math.min(off, limit) ** 2 / 2;
    const keep = 1 - 1 / SEEN_READINGS;
    this.seen = { squares: keep * this.seen.squares + square, weight: keep * this.seen.weight + 1 };
    return off <= limit;
  }

  /** Each way, of one reading: what is expected, and what was seen. */
  private scatter(reading: Reading): number {
    const { squares, weight } = this.seen;
    return Math.sqrt((EXPECTED_WEIGHT * reading.scatter_mps ** 2 + squares) /
      (EXPECTED_WEIGHT + weight));
  }

  /** Deviation of the smoothed velocity, each way, m/s. */
  private error(last: Reading): number {
    const scatter = this.scatter(last);
    const smoothing = SMOOTHING_S[last.from];
    if (last.from === 'receiver') {
      return scatter / Math.sqrt(1 + Math.min(this.over_s, 2 * smoothing) / SHARED_S);
    }
    // From place to place the errors between cancel: those of the two ends are left. Half of a
    // place's error wanders too slowly to matter here; what jitters is seen. Tried on walks with
    // errors that last from nothing to 100 s: tests/unit/phone/ground_speed.test.ts.
    const ends = Math.hypot(last.place_m / 2, scatter * (last.dt_s ?? 1));
    return (Math.SQRT2 * ends) / Math.min(this.over_s, Math.SQRT2 * smoothing);
  }

  private followRefused(): void {
    const run = this.refused;
    this.restart();
    this.seen = { squares: 0, weight: 0 };
    for (const reading of run) this.add(reading, reading.dt_s ?? 0);
  }
}

function offFrom(velocity: Vector, reading: Reading): Vector {
  return plus(reading.velocity, velocity, -1);
}
