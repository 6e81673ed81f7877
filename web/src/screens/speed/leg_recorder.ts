// One leg of a two-way run: the mean of the readings over ground while one heading is held.
import { apart, bearingOf, plus, sizeOf, type Vector } from '../../phone/fix';
import { OLD_MS } from '../../phone/phone_speed';
import type { Reading } from '../../phone/readings';

/** What is recorded so far. */
export interface LegSoFar {
  /** Held, in readings that follow one another; gaps are left out. */
  seconds: number;
  speed_mps: number;
  /** Null before there is a reading. */
  course_deg: number | null;
  /** For the engine: deviation of the readings each way, or what a receiver without a speed of its
   * own is worth; null before there are two. */
  spread_mps: number | null;
  /** Gaps within the leg. */
  left_out_s: number;
  /** Since the last reading, or since the start. */
  silent_s: number;
  /** How far the latest readings go off the leg's mean. */
  swing_deg: number;
}

/** A silence as long as makes a speed old: said, while the leg goes on. */
export const SILENT_S = OLD_MS / 1000;
/** A latest course further off than this is a turn, deg. Judgement. */
export const TURNING_DEG = 25;
/** The latest readings are those of about so long, s. Judgement. */
const LATEST_S = 8;
/**
 * Readings closer than this are not independent, s. The engine takes a spread s of readings over T
 * seconds to leave s^2 10/T in their mean (docs/method.md, section 12).
 */
const SHARED_S = 10;

export class LegRecorder {
  private mean: Vector = { north: 0, east: 0 };
  private latest: Vector = { north: 0, east: 0 };
  private seconds = 0;
  private squares = 0;
  /** Time by places alone, and the places' deviation over it, squared. */
  private places = { seconds: 0, squares: 0 };
  private left_out_s = 0;
  private last_ms: number;
  private following = false;

  constructor(started_ms: number) {
    this.last_ms = started_ms;
  }

  /** The first reading only sets the clock: it reaches back before the start. */
  take(reading: Reading): void {
    const since_s = (reading.at_ms - this.last_ms) / 1000;
    if (since_s < 0) return;
    if (this.following && reading.dt_s !== null) this.add(reading, since_s);
    else if (this.seconds > 0) this.left_out_s += since_s;
    this.following = true;
    this.last_ms = reading.at_ms;
  }

  /** Goes on after a stop; the time between is left out. */
  resume(): void {
    this.following = false;
  }

  soFar(now_ms: number): LegSoFar {
    const known = this.seconds > 0;
    const course_deg = known ? bearingOf(this.mean) : null;
    return {
      seconds: this.seconds, speed_mps: sizeOf(this.mean), course_deg,
      spread_mps: known ? this.spread() : null,
      left_out_s: this.left_out_s,
      silent_s: Math.max(0, now_ms - this.last_ms) / 1000,
      swing_deg: course_deg === null ? 0 : apart(bearingOf(this.latest), course_deg),
    };
  }

  private add(reading: Reading, dt_s: number): void {
    this.seconds += dt_s;
    const off = plus(reading.velocity, this.mean, -1);
    this.mean = plus(this.mean, off, dt_s / this.seconds);
    const still_off = plus(reading.velocity, this.mean, -1);
    this.squares += (dt_s * (off.north * still_off.north + off.east * still_off.east)) / 2;
    if (reading.from === 'positions') {
      this.places.seconds += dt_s;
      this.places.squares += dt_s * reading.place_m ** 2;
    }
    const part = this.seconds === dt_s ? 1 : 1 - Math.exp(-dt_s / LATEST_S);
    this.latest = plus(this.latest, plus(reading.velocity, this.latest, -1), part);
  }

  private spread(): number {
    const { places, seconds } = this;
    if (places.seconds <= seconds / 2) return Math.sqrt(this.squares / seconds);
    // From place to place the mean is the way between the two ends: their errors are all that is
    // left, 2 p^2 / T^2. The spread that is worth as much: s^2 10 / T = 2 p^2 / T^2.
    return Math.sqrt((2 * places.squares) / places.seconds / (SHARED_S * seconds));
  }
}
