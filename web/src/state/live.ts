// The live shape: follows the finger with the median and as much of the band as time allows, and
// fills the whole band in when the hand rests.
import type { Problem, RiggerDepth } from '../engine/answers';
import { isProblem, type Desk } from '../engine/desk';
import type { DepthRequest } from '../engine/requests';
import type { GoodRig } from './app';
import { seaOf, type GroundSpeed, type Hand } from './sea';
import type { UnitChoice } from '../engine/answers';

/** What is drawn of one rigger. */
export interface LiveRigger {
  name: string;
  /** The last good answer; none yet: undefined. */
  depth: RiggerDepth | undefined;
  /** Draws behind its band; FULL: the whole band. */
  draws: number;
  /** Why there is no answer for what is in hand now; the last good one stays drawn. */
  problem: Problem | undefined;
}

export interface LiveView {
  riggers: LiveRigger[];
  cautions: string[];
  notes: string[];
  /** Of the last batch: time in the worker, ms. */
  solve_ms: number;
}

export interface Setting {
  rig: GoodRig;
  hand: Hand;
  ground: GroundSpeed | null;
  units: UnitChoice;
}

/** Draws behind a whole band: the engine's own number. */
export const FULL = 128;
/** The worker may take so long while a finger drags, ms; more draws are tried below it. */
const BUDGET_MS = 0.9;
const MOST_DRAGGED = 32;
/** The hand rests when nothing changed for so long; longer while a finger is still on the glass. */
const REST_MS = 140;
const REST_HELD_MS = 600;

export class Live {
  private readonly shown = new Map<string, LiveRigger & { key: string; toml: string }>();
  private wanted: Setting | undefined;
  private asking = false;
  private rest: ReturnType<typeof setTimeout> | undefined;
  private draws = 0;
  private held = false;
  private remarks: Pick<LiveView, 'cautions' | 'notes'> = { cautions: [], notes: [] };
  private solve_ms = 0;

  constructor(
    private readonly desk: Desk,
    private readonly onView: (view: LiveView) => void,
  ) {}

  /** What is in hand now. Called as often as it changes. */
  follow(setting: Setting): void {
    this.wanted = setting;
    this.waitForRest();
    if (!this.asking) void this.chase();
  }

  /** A finger went down, or was lifted: then the whole band may come at once. */
  hold(held: boolean): void {
    this.held = held;
    if (this.wanted) this.waitForRest();
  }

  private waitForRest(): void {
    clearTimeout(this.rest);
    this.rest = setTimeout(() => void this.fill(), this.held ? REST_HELD_MS : REST_MS);
  }

  stop(): void {
    clearTimeout(this.rest);
    this.wanted = undefined;
  }

  /** Answers what is wanted, and goes on while it changed meanwhile. */
  private async chase(): Promise<void> {
    this.asking = true;
    try {
      let last: Setting | undefined;
      while (this.wanted && this.wanted !== last) {
        last = this.wanted;
        await this.answer(last, this.draws);
        this.tune();
      }
    } finally {
      this.asking = false;
    }
  }

  /** The whole band, rigger by rigger, as long as nothing changes. */
  private async fill(): Promise<void> {
    const setting = this.wanted;
    if (!setting) return;
    if (this.asking) {
      this.waitForRest();
      return;
    }
    for (const { name } of setting.rig.facts.riggers) {
      if (this.wanted !== setting) return;
      this.asking = true;
      try {
        await this.answer(setting, FULL, name);
      } finally {
        this.asking = false;
      }
    }
    if (this.wanted && this.wanted !== setting) void this.chase();
  }

  private async answer(setting: Setting, draws: number, only?: string): Promise<void> {
    const requests = requestsOf(setting, draws)
      .filter((r) => (only === undefined || r.rigger === only) && this.isNews(r));
    if (requests.length === 0) return;
    const { outcomes, solve_ms } = await this.desk.askAll(requests);
    if (draws < FULL) this.solve_ms = solve_ms;
    outcomes.forEach((outcome, i) => {
      const request = requests[i];
      if (!request) return;
      const name = request.rigger ?? '';
      const before = this.shown.get(name);
      const key = keyOf(request);
      if (isProblem(outcome)) {
        this.shown.set(name, { name, key, toml: request.rig_toml, depth: before?.depth, draws: before?.draws ?? 0,
          problem: outcome.problem });
      } else {
        this.shown.set(name, { name, key, toml: request.rig_toml, depth: outcome.riggers[0], draws, problem: undefined });
        this.keepRemarks(outcome);
      }
    });
    this.show(setting);
  }

  /** The same words stay the same value, so that nothing is drawn again for them. */
  private keepRemarks({ cautions, notes }: Pick<LiveView, 'cautions' | 'notes'>): void {
    const same = (a: string[], b: string[]): boolean =>
      a.length === b.length && a.every((line, i) => line === b[i]);
    if (!same(cautions, this.remarks.cautions)) this.remarks = { ...this.remarks, cautions };
    if (!same(notes, this.remarks.notes)) this.remarks = { ...this.remarks, notes };
  }

  private isNews(request: DepthRequest): boolean {
    const shown = this.shown.get(request.rigger ?? '');
    if (shown?.toml !== request.rig_toml || shown.key !== keyOf(request)) return true;
    return shown.problem === undefined && shown.draws < (request.bands ? request.draws ?? FULL : 0);
  }

  private show(setting: Setting): void {
    const riggers = setting.rig.facts.riggers.flatMap(({ name }) => this.shown.get(name) ?? []);
    this.onView({ riggers, ...this.remarks, solve_ms: this.solve_ms });
  }

  /** More draws while there is time, fewer when there is none. */
  private tune(): void {
    if (this.solve_ms > BUDGET_MS) this.draws = Math.floor(this.draws / 2);
    else if (this.solve_ms < BUDGET_MS / 2) {
      this.draws = Math.min(MOST_DRAGGED, Math.max(4, this.draws * 2));
    }
    if (this.draws < 4) this.draws = 0;
  }
}

/** One request a rigger, so that only what changed is asked again. */
function requestsOf(setting: Setting, draws: number): DepthRequest[] {
  const { rig, hand, ground, units } = setting;
  const sea = seaOf(hand, ground);
  return rig.facts.riggers.map(({ name }) => ({
    question: 'depth',
    rig_toml: rig.toml,
    rigger: name,
    ball_mass_kg: hand.balls_kg[name] ?? null,
    count_m: hand.counts_m[name] ?? 0,
    ...sea,
    bands: draws > 0,
    ...(draws > 0 ? { draws } : {}),
    units,
    shape: true,
  }));
}

/** The request without what only makes it finer, and without the rig's long text. */
function keyOf(request: DepthRequest): string {
  const { rig_toml, bands, draws, ...rest } = request;
  return JSON.stringify(rest);
}
