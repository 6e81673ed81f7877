// Everything the page knows, in one place, and how it is kept between visits.
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { AboutAnswer, Problem, RigFacts, UnitChoice } from '../engine/answers';
import { isProblem, type Desk } from '../engine/desk';
import { usualHand } from './hand';
import { newId, type StoredRig } from './rigs';
import { STILL, type GroundSpeed, type Hand } from './sea';
import { Shower } from './shown';
import { Storage, type Stored } from './storage';
import { Store } from './store';

/** A rig of the person's. One that cannot be read is kept all the same, with what is wrong. */
export type Rig = StoredRig & ({ facts: RigFacts; problem: null } | { facts: null; problem: Problem });
export type GoodRig = Rig & { facts: RigFacts };

export interface Settings {
  units: UnitChoice;
  look: 'day' | 'night';
  keepAwake: boolean;
}

export interface AppState {
  rigs: Rig[];
  activeRig: string;
  hand: Hand;
  settings: Settings;
  ground: GroundSpeed | null;
  /** Something to tell the person at the foot of the screen, with a way back if there is one. */
  notice: { words: string; undo?: () => void } | null;
}

export class App {
  private lastKept: unknown[] = [];

  private constructor(
    readonly desk: Desk,
    readonly about: AboutAnswer,
    readonly state: Store<AppState>,
    readonly storage: Storage,
  ) {}

  /** Reads what was kept, or starts with the example rigs. */
  static async open(desk: Desk, storage: Storage, examples: string[]): Promise<App> {
    const about = await desk.ask({ question: 'about' });
    if (isProblem(about)) throw new Error(about.problem.message);
    const stored = storage.read();
    const kept = stored?.rigs.length ? stored.rigs : examples.map((toml) => ({ id: newId(), toml }));
    const rigs = await Promise.all(kept.map((rig) => readRig(desk, rig)));
    const state = new Store<AppState>({
      rigs,
      activeRig: stored?.activeRig ?? '',
      hand: { ...usualHand(), ...stored?.hand },
      settings: { units: 'feet', look: 'day', keepAwake: false, ...stored?.settings },
      ground: null,
      notice: null,
    });
    const app = new App(desk, about, state, storage);
    app.settle();
    state.watch(() => app.keep());
    app.keep();
    return app;
  }

  get shower(): Shower {
    return new Shower(this.about, this.state.get().settings.units);
  }

  /** The rig in use: the chosen one, else the first that can be read. */
  activeRig(): GoodRig | null {
    const { rigs, activeRig } = this.state.get();
    const good = rigs.filter((rig): rig is GoodRig => rig.facts !== null);
    return good.find((rig) => rig.id === activeRig) ?? good[0] ?? null;
  }

  changeHand(patch: Partial<Hand>): void {
    this.state.change({ hand: { ...this.state.get().hand, ...patch } });
  }

  changeSettings(patch: Partial<Settings>): void {
    this.state.change({ settings: { ...this.state.get().settings, ...patch } });
  }

  /** Takes another rig in hand. */
  useRig(id: string): void {
    this.state.change({ activeRig: id });
    this.settle();
  }

  /** Reads a rig file's text; the rig is not kept yet. */
  readRig(rig: StoredRig): Promise<Rig> {
    return readRig(this.desk, rig);
  }

  /** Replaces all rigs, and sees that what is in hand still fits. */
  setRigs(rigs: Rig[]): void {
    this.state.change({ rigs });
    this.settle();
  }

  say(words: string, undo?: () => void): void {
    this.state.change({ notice: undo ? { words, undo } : { words } });
  }

  /** Makes counts, balls and the chosen rigger fit the rig in use. */
  private settle(): void {
    const rig = this.activeRig();
    if (!rig) return;
    const { hand } = this.state.get();
    const names = rig.facts.riggers.map((rigger) => rigger.name);
    const counts_m: Hand['counts_m'] = {};
    const balls_kg: Hand['balls_kg'] = {};
    for (const rigger of rig.facts.riggers) {
      const count = hand.counts_m[rigger.name] ?? usualHand().counts_m[''] ?? 0;
      counts_m[rigger.name] = Math.min(count, rigger.line_on_reel_m);
      const ball = hand.balls_kg[rigger.name];
      if (ball !== undefined) {
        balls_kg[rigger.name] = Math.min(
          Math.max(ball, rigger.ball.smallest_mass_kg), rigger.ball.largest_mass_kg);
      }
    }
    this.state.change({
      activeRig: rig.id,
      hand: {
        ...hand, counts_m, balls_kg,
        rigger: names.includes(hand.rigger) ? hand.rigger : names[0] ?? '',
        current: hand.current.length ? hand.current : [STILL],
      },
    });
  }

  /** Writes what is to be kept, when any of it is another than last time. */
  private keep(): void {
    const { rigs, activeRig, hand, settings } = this.state.get();
    const parts = [rigs, activeRig, hand, settings];
    if (parts.every((part, i) => part === this.lastKept[i])) return;
    this.lastKept = parts;
    const stored: Stored = {
      rigs: rigs.map(({ id, toml }) => ({ id, toml })), activeRig, hand, settings,
    };
    this.storage.write(stored, (words) => this.say(words));
  }
}

async function readRig(desk: Desk, rig: StoredRig): Promise<Rig> {
  const outcome = await desk.ask({ question: 'rig_read', rig_toml: rig.toml });
  return isProblem(outcome)
    ? { ...rig, facts: null, problem: outcome.problem }
    : { ...rig, facts: outcome.facts, problem: null };
}

export const AppContext = createContext<App | null>(null);

export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error('useApp outside of the app');
  return app;
}
