// The desk where questions are handed in. Quick ones and slow ones go to two workers, so that a card
// with all its bands never holds up the finger.
import type { Problem } from './answers';
import { Lane } from './lane';
import type { AnswerTo, Request } from './requests';
import { compileEngine, makeWorker } from './source';

export { CutOff } from './lane';
export { EngineCannotStart } from './source';

export type Outcome<R extends Request> = AnswerTo<R> | { question: string; problem: Problem };

export function isProblem(outcome: object): outcome is { question: string; problem: Problem } {
  return 'problem' in outcome;
}

function parse<R extends Request>(text: string): Outcome<R> {
  return JSON.parse(text) as Outcome<R>;
}

export class Desk {
  private slowTurn = 0;
  private readonly lastSlow = new Map<string, number>();

  private constructor(
    private readonly quick: Lane,
    private readonly slow: Lane,
  ) {}

  /** Starts the engine. Fails with EngineCannotStart, whose message is for the person. */
  static async open(): Promise<Desk> {
    const compiled = await compileEngine();
    const desk = new Desk(new Lane(compiled, makeWorker), new Lane(compiled, makeWorker));
    await desk.quick.start();
    return desk;
  }

  /** A quick question: answered within a few milliseconds. */
  async ask<R extends Request>(request: R): Promise<Outcome<R>> {
    const { answers } = await this.quick.ask([JSON.stringify(request)]);
    return parse<R>(answers[0] ?? '');
  }

  /** Several quick questions in one go, with the time they took in the worker. */
  async askAll<R extends Request>(
    requests: R[]): Promise<{ outcomes: Outcome<R>[]; solve_ms: number }> {
    const { answers, solve_ms } = await this.quick.ask(requests.map((r) => JSON.stringify(r)));
    return { outcomes: answers.map((text) => parse<R>(text)), solve_ms };
  }

  /**
   * A question that may take seconds. A newer one of the same key cuts the older one off: its caller
   * gets a CutOff.
   */
  async askSlowly<R extends Request>(key: string, request: R): Promise<Outcome<R>> {
    this.slowTurn += 1;
    const turn = this.slowTurn;
    const older = this.lastSlow.has(key);
    this.lastSlow.set(key, turn);
    if (older) this.slow.cutOff();
    try {
      const { answers } = await this.slow.ask([JSON.stringify(request)]);
      return parse<R>(answers[0] ?? '');
    } finally {
      if (this.lastSlow.get(key) === turn) this.lastSlow.delete(key);
    }
  }

  /** Nobody waits for this slow question any more: its caller gets a CutOff. */
  drop(key: string): void {
    if (this.lastSlow.delete(key)) this.slow.cutOff();
  }
}
