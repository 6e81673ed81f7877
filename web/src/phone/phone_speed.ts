// The phone's own speed: from its fixes to AppState.ground, and back to the hand's speed when the
// fixes stay away.
import type { App } from '../state/app';
import { Store } from '../state/store';
import type { PlaceWatch, WatchState } from './geolocation';
import { GroundFilter, type GroundVelocity } from './ground_speed';
import { Readings, type Reading } from './readings';

/** Older than this a speed is shown as old, with its age, ms. A phone in the open fixes each second. */
export const OLD_MS = 5_000;
/**
 * Older than this it is no speed any more, ms: a trolling boat has gone 25 m and may have another
 * throttle. Judgement.
 */
export const LOST_MS = 20_000;
/** Waiting for the first fix longer than this is said once, ms. */
const FIRST_MS = 30_000;
const LOOK_MS = 1_000;

export interface PhoneSpeed {
  watch: WatchState;
  /** The last that was known; may be long ago. */
  velocity: GroundVelocity | null;
  /** `none`: not known yet. */
  fresh: 'none' | 'fresh' | 'old' | 'lost';
  /** Fixes come, but off a mast or a network: the place is too rough for a speed. */
  rough: boolean;
}

export class SpeedKeeper {
  readonly state: Store<PhoneSpeed>;
  private readings = new Readings();
  private filter = new GroundFilter();
  private readonly wanting = new Set<string>();
  private readonly readers = new Set<(reading: Reading) => void>();
  private looking: ReturnType<typeof setInterval> | undefined;
  /** Since when a speed is waited for, and whether it was said that there is none. */
  private waiting_ms = 0;
  private said: string | undefined;

  constructor(
    private readonly app: Pick<App, 'state' | 'say' | 'shower'>,
    readonly watch: PlaceWatch,
    private readonly now_ms: () => number,
  ) {
    this.state = new Store<PhoneSpeed>({ watch: watch.state.get(), velocity: null, fresh: 'none',
      rough: false });
    watch.state.watch(() => this.look());
    watch.listen((fix) => {
      const reading = this.readings.take(fix);
      const rough = reading === 'rough';
      if (rough !== this.state.get().rough) this.state.change({ rough });
      if (typeof reading === 'object') this.take(reading);
    });
    app.state.watch(() => this.want('hand', app.state.get().hand.usePhone));
    this.want('hand', app.state.get().hand.usePhone);
  }

  /** Somebody wants the speed, or no more. The phone is watched while anybody does. */
  want(who: string, wanted: boolean): void {
    if (this.wanting.has(who) === wanted) return;
    if (wanted) this.wanting.add(who);
    else this.wanting.delete(who);
    if (this.wanting.size === 0) this.stop();
    else if (this.looking === undefined) this.start();
    this.look();
  }

  /** Asks once more after a refusal. */
  askAgain(): void {
    this.watch.start();
  }

  /** Called with every reading that is believed; gives back what ends it. */
  listen(reader: (reading: Reading) => void): () => void {
    this.readers.add(reader);
    return () => this.readers.delete(reader);
  }

  private start(): void {
    this.readings = new Readings();
    this.filter = new GroundFilter();
    this.waiting_ms = this.now_ms();
    this.said = undefined;
    this.looking = setInterval(() => this.look(), LOOK_MS);
    this.watch.start();
  }

  private stop(): void {
    clearInterval(this.looking);
    this.looking = undefined;
    this.watch.stop();
    this.state.change({ velocity: null, fresh: 'none', rough: false });
  }

  private take(reading: Reading): void {
    if (!this.filter.take(reading)) return;
    const velocity = this.filter.now();
    if (velocity) this.state.change({ velocity });
    this.look();
    for (const reader of [...this.readers]) reader(reading);
  }

  /** What is known now, and how old it is. */
  private look(): void {
    const { velocity, fresh: before, watch: watched } = this.state.get();
    const age_ms = velocity ? this.now_ms() - velocity.at_ms : 0;
    const fresh = !velocity ? 'none' : age_ms > LOST_MS ? 'lost' : age_ms > OLD_MS ? 'old' : 'fresh';
    const watch = this.watch.state.get();
    if (fresh !== before || watch !== watched) this.state.change({ fresh, watch });
    this.hand();
    this.tell();
  }

  /** Puts it where the questions are asked from. */
  private hand(): void {
    const { velocity, fresh } = this.state.get();
    const { ground: before, hand } = this.app.state.get();
    if (!hand.usePhone || !velocity || fresh === 'lost') {
      if (before) this.app.state.change({ ground: null });
      return;
    }
    const { speed_mps, course_deg, at_ms, accuracy_mps } = velocity;
    const old = fresh === 'old';
    if (before?.at_ms === at_ms && before.old === old) return;
    this.app.state.change({ ground: { speed_mps, course_deg, at_ms, accuracy_mps, old } });
  }

  /** Says once that the hand's speed is used instead; takes it back when the fixes are back. */
  private tell(): void {
    const { notice, hand, ground } = this.app.state.get();
    if (this.said !== undefined) {
      if (ground === null && hand.usePhone) return;
      if (notice?.words === this.said) this.app.state.change({ notice: null });
      this.said = undefined;
      this.waiting_ms = this.now_ms();
      return;
    }
    const why = hand.usePhone ? this.whyNot() : undefined;
    if (why === undefined) return;
    const speed = this.app.shower.quantity(hand.speed_mps, 'speed');
    this.said = `${why} By hand: ${speed} through the water.`;
    this.app.say(this.said);
  }

  private whyNot(): string | undefined {
    const { fresh, watch } = this.state.get();
    if (watch === 'missing') return 'This browser gives no speed.';
    if (watch === 'refused') return 'The phone’s speed was refused.';
    if (fresh === 'lost') return `The phone has had no fix for ${LOST_MS / 1000} s.`;
    const waited = this.looking !== undefined && this.now_ms() - this.waiting_ms > FIRST_MS;
    return fresh === 'none' && waited ? 'The phone has found no fix yet.' : undefined;
  }
}
