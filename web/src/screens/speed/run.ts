// The two-way run: which leg is being recorded, and what is kept. Goes on while other screens are
// looked at.
import type { Phone } from '../../phone/start';
import { Store } from '../../state/store';
import { keepLegs, keptLegs, type KeptLeg, type Legs, type Place } from './legs';
import { LegRecorder, type LegSoFar } from './leg_recorder';

export type Which = 0 | 1;

export interface RunState {
  legs: Legs;
  running: { which: Which; soFar: LegSoFar } | null;
}

/** The engine's own least; a leg that is shorter has no mean. */
export const LEAST_S = 20;
/** A good leg. The phone buzzes here, so that nobody needs to look. */
export const GOOD_S = 60;
const LOOK_MS = 1_000;

export interface RunSurroundings {
  phone: Pick<Phone, 'speed' | 'wake'>;
  place: Place | undefined;
  buzz(): void;
  now_ms(): number;
  wall_ms(): number;
}

export class TwoWayRun {
  readonly state: Store<RunState>;
  private recorder: LegRecorder | undefined;
  private ends: (() => void)[] = [];
  private before: KeptLeg | null = null;

  constructor(private readonly around: RunSurroundings) {
    const legs = keptLegs(around.place, around.wall_ms());
    this.state = new Store<RunState>({ legs, running: null });
    // A page that is put away takes the leg being recorded with it: what there is is kept.
    globalThis.addEventListener?.('pagehide', () => {
      const { running } = this.state.get();
      if (!running || !this.recorder) return;
      keepLegs(around.place, this.with(running.which, this.legOf(this.recorder)));
    });
  }

  start(which: Which): void {
    if (this.state.get().running) return;
    this.before = this.state.get().legs[which];
    this.record(which, new LegRecorder(this.around.now_ms()));
    this.putLeg(which, null);
  }

  /** Drops what is being recorded, and has the leg back that was there before. */
  leave(): void {
    const which = this.state.get().running?.which;
    if (which === undefined) return;
    this.end();
    this.putLeg(which, this.before);
  }

  /** Keeps what was recorded; undefined when there was nothing. Gives how to go on with the leg. */
  stop(): { leg: KeptLeg; goOn: () => void } | undefined {
    const { recorder } = this;
    const which = this.state.get().running?.which;
    if (!recorder || which === undefined) return undefined;
    this.end();
    const leg = this.legOf(recorder);
    this.putLeg(which, leg ?? this.before);
    if (!leg) return undefined;
    return { leg, goOn: () => {
      if (this.state.get().running) return;
      this.putLeg(which, null);
      recorder.resume();
      this.record(which, recorder);
    } };
  }

  /** Replaces a leg. */
  putLeg(which: Which, leg: KeptLeg | null): void {
    const legs = this.with(which, leg);
    this.state.change({ legs });
    keepLegs(this.around.place, legs);
  }

  /** Both legs away; gives how to have them back. */
  clear(): () => void {
    this.end();
    const { legs } = this.state.get();
    this.putLeg(0, null);
    this.putLeg(1, null);
    return () => { legs.forEach((leg, i) => this.putLeg(i as Which, leg)); };
  }

  private with(which: Which, leg: KeptLeg | null): Legs {
    const [first, second] = this.state.get().legs;
    return which === 0 ? [leg, second] : [first, leg];
  }

  private record(which: Which, recorder: LegRecorder): void {
    const { phone } = this.around;
    this.recorder = recorder;
    const look = (): void => this.look(which, recorder);
    const timer = setInterval(look, LOOK_MS);
    this.ends = [
      phone.speed.listen((reading) => { recorder.take(reading); look(); }),
      () => clearInterval(timer),
    ];
    look();
    phone.wake.want('run', true);
    phone.speed.want('run', true);
  }

  private look(which: Which, recorder: LegRecorder): void {
    const held = this.state.get().running?.soFar.seconds ?? 0;
    const soFar = recorder.soFar(this.around.now_ms());
    if (held < GOOD_S && held > 0 && soFar.seconds >= GOOD_S) this.around.buzz();
    this.state.change({ running: { which, soFar } });
  }

  private end(): void {
    for (const end of this.ends) end();
    this.ends = [];
    this.recorder = undefined;
    this.state.change({ running: null });
    this.around.phone.speed.want('run', false);
    this.around.phone.wake.want('run', false);
  }

  private legOf(recorder: LegRecorder): KeptLeg | null {
    const soFar = recorder.soFar(this.around.now_ms());
    if (soFar.course_deg === null) return null;
    const { seconds, speed_mps, course_deg, spread_mps, left_out_s } = soFar;
    return { ground_speed_mps: speed_mps, course_deg, seconds, spread_mps, left_out_s,
      heading_deg: this.before?.heading_deg ?? null, log_mps: null, by: 'phone',
      ended_ms: this.around.wall_ms() };
  }
}
