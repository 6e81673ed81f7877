// Answers that follow the hand: the latest wish wins, one batch of quick questions is on its way at a
// time, and the bands come when the hand rests.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../engine/answers';
import { CutOff, isProblem, type Desk } from '../engine/desk';
import type { AnswerTo, CardRequest, CompareRequest, CountRequest, DepthRequest } from '../engine/requests';
import { useApp } from './app';

type Chaseable = CountRequest | CardRequest | CompareRequest | DepthRequest;

/** What is asked, by the name of what it is about. */
export type Wishes<R extends Chaseable> = readonly (readonly [name: string, request: R])[];

/** What is known about one wish. */
export interface Chased<A> {
  /** The last good answer; none yet: undefined. */
  answer: A | undefined;
  /** The answer is to what is wished now. */
  current: boolean;
  /** Draws behind its bands; 0: none yet. */
  draws: number;
  /** All is there that was wished. */
  done: boolean;
  /** Why there is no answer, or no band, for what is wished now. */
  problem: Problem | undefined;
}

/** Draws of a whole band: the engine's own number. */
export const FULL = 128;
/** A rough band first, within a blink, then the whole one. */
export const ROUGH_THEN_FULL: readonly number[] = [16, FULL];
export const FULL_ONLY: readonly number[] = [FULL];
export const NO_BANDS: readonly number[] = [];
/** The hand rests when nothing changed for so long. */
const REST_MS = 250;
/** All screens share one key, so that a screen's band never waits for one of a screen left behind. */
const SLOW_KEY = 'chase';

interface Wish<R> {
  name: string;
  request: R;
  key: string;
}

interface Known<A> {
  answer: A | undefined;
  answerKey: string;
  draws: number;
  problem: Problem | undefined;
  problemKey: string;
}

const NOTHING = { answer: undefined, answerKey: '', draws: 0, problem: undefined, problemKey: '' };

function problemFrom(error: unknown): Problem {
  return {
    kind: 'fault', subject: 'engine', line: 0, path: null,
    message: error instanceof Error ? error.message : String(error),
    remedy: 'Load the page again.',
  };
}

export class Chase<R extends Chaseable> {
  private wishes: Wish<R>[] = [];
  private readonly known = new Map<string, Known<AnswerTo<R>>>();
  private asking = false;
  /** Counts the changes of what is wished. */
  private turn = 0;
  private rest: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly desk: Pick<Desk, 'askAll' | 'askSlowly'>,
    /** Draws of the bands, from rough to whole. */
    private readonly stages: readonly number[],
    private readonly onView: (view: Map<string, Chased<AnswerTo<R>>>) => void,
  ) {}

  /** What is wished now. Called as often as one likes: the same wishes are no news. */
  follow(wishes: Wishes<R>): void {
    const now = wishes.map(([name, request]) => ({ name, request, key: JSON.stringify(request) }));
    const same = now.length === this.wishes.length &&
      now.every(({ name, key }, i) => this.wishes[i]?.name === name && this.wishes[i]?.key === key);
    if (same) return;
    this.wishes = now;
    this.turn += 1;
    this.fillSoon();
    this.show();
    if (!this.asking) void this.chase();
  }

  stop(): void {
    clearTimeout(this.rest);
    this.wishes = [];
    this.turn += 1;
  }

  private fillSoon(): void {
    clearTimeout(this.rest);
    if (this.stages.length > 0) this.rest = setTimeout(() => void this.fill(), REST_MS);
  }

  private knownOf(name: string): Known<AnswerTo<R>> {
    return this.known.get(name) ?? NOTHING;
  }

  private isNews({ name, key }: Wish<R>): boolean {
    const { answerKey, problemKey } = this.knownOf(name);
    return answerKey !== key && problemKey !== key;
  }

  /** The medians of what is wished, and on while that changed meanwhile. */
  private async chase(): Promise<void> {
    this.asking = true;
    try {
      for (;;) {
        const news = this.wishes.filter((wish) => this.isNews(wish));
        if (news.length === 0) return;
        const { outcomes } = await this.desk.askAll(
          news.map(({ request }) => ({ ...request, bands: false })));
        news.forEach((wish, i) => {
          const outcome = outcomes[i];
          if (outcome) this.take(wish, outcome as AnswerTo<R>, 0);
        });
        this.show();
      }
    } catch (error) {
      this.fail(this.wishes, error);
    } finally {
      this.asking = false;
    }
  }

  /** The bands, wish by wish, as long as nothing changes. */
  private async fill(): Promise<void> {
    const turn = this.turn;
    if (this.asking) return this.fillSoon();
    for (const draws of this.stages) {
      for (const wish of this.wishes) {
        const { answerKey, problemKey, draws: has } = this.knownOf(wish.name);
        if (answerKey !== wish.key || problemKey === wish.key || has >= draws) continue;
        const went = await this.fillOne(wish, draws);
        if (turn !== this.turn) return;
        if (!went) return this.fillSoon();
        this.show();
      }
    }
  }

  /** False when it was cut off for another question. */
  private async fillOne(wish: Wish<R>, draws: number): Promise<boolean> {
    try {
      const request = { ...wish.request, bands: true, ...(draws < FULL ? { draws } : {}) };
      const outcome = await this.desk.askSlowly(SLOW_KEY, request);
      if (this.wishes.some(({ name, key }) => name === wish.name && key === wish.key)) {
        this.take(wish, outcome as AnswerTo<R>, draws);
      }
    } catch (error) {
      if (error instanceof CutOff) return false;
      this.fail([wish], error);
    }
    return true;
  }

  private take({ name, key }: Wish<R>, outcome: AnswerTo<R>, draws: number): void {
    const before = this.knownOf(name);
    this.known.set(name, isProblem(outcome)
      ? { ...before, problem: outcome.problem, problemKey: key }
      : { answer: outcome, answerKey: key, draws, problem: undefined, problemKey: '' });
  }

  private fail(wishes: Wish<R>[], error: unknown): void {
    for (const { name, key } of wishes) {
      this.known.set(name, { ...this.knownOf(name), problem: problemFrom(error), problemKey: key });
    }
    this.show();
  }

  private show(): void {
    const most = this.stages.at(-1) ?? 0;
    this.onView(new Map(this.wishes.map(({ name, key }) => {
      const { answer, answerKey, draws, problem, problemKey } = this.knownOf(name);
      const current = answerKey === key;
      const trouble = problemKey === key ? problem : undefined;
      return [name, { answer, current, draws, problem: trouble,
        done: trouble !== undefined || (current && draws >= most) }];
    })));
  }
}

/** What is known about the wishes, by name; drawn again as more comes in. */
export function useChase<R extends Chaseable>(
  wishes: Wishes<R>, stages: readonly number[]): Map<string, Chased<AnswerTo<R>>> {
  const { desk } = useApp();
  const [view, setView] = useState(new Map<string, Chased<AnswerTo<R>>>());
  const chase = useRef<Chase<R>>();
  chase.current ??= new Chase<R>(desk, stages, setView);
  useEffect(() => chase.current?.follow(wishes));
  useEffect(() => () => chase.current?.stop(), []);
  return view;
}

/** Something that was wished is not there yet. */
export function working(view: Map<string, Chased<unknown>>): boolean {
  return [...view.values()].some(({ done }) => !done);
}
