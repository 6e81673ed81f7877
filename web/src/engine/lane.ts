// One worker and the questions waiting for it. A lane can be cut off and goes on with a new worker.
import { EngineCannotStart } from './source';
import type { FromWorker, ToWorker } from './messages';

export interface Batch {
  answers: string[];
  /** Time within the worker, ms. */
  solve_ms: number;
}

/** What a caller gets whose question was cut off for a newer one. */
export class CutOff extends Error {}

interface Waiting {
  id: number;
  requests: string[];
  resolve(batch: Batch): void;
  reject(error: Error): void;
}

export class Lane {
  private worker: Worker | undefined;
  private ready: Promise<void> | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private lastId = 0;

  constructor(
    private readonly compiled: WebAssembly.Module,
    private readonly makeWorker: () => Worker,
  ) {}

  /** Starts the worker, if it is not running. */
  start(): Promise<void> {
    this.ready ??= new Promise<void>((resolve, reject) => {
      const fail = (words: string): void => {
        const error = new EngineCannotStart(words);
        reject(error);
        this.end(error);
      };
      try {
        const worker = this.makeWorker();
        this.worker = worker;
        worker.onmessage = (event: MessageEvent<FromWorker>) => {
          const message = event.data;
          if (message.kind === 'ready') resolve();
          else if (message.kind === 'failed') fail(`The engine stopped: ${message.words}`);
          else this.deliver(message);
        };
        worker.onerror = (event) => fail(`The engine's worker stopped: ${event.message ?? ''}`);
        this.post({ kind: 'start', compiled: this.compiled });
      } catch (error) {
        fail(error instanceof Error ? error.message : String(error));
      }
    });
    return this.ready;
  }

  /** Asks a few questions in one go. */
  async ask(requests: string[]): Promise<Batch> {
    await this.start();
    return new Promise<Batch>((resolve, reject) => {
      this.lastId += 1;
      const id = this.lastId;
      this.waiting.set(id, { id, requests, resolve, reject });
      this.post({ kind: 'ask', id, requests });
    });
  }

  get busy(): boolean {
    return this.waiting.size > 0;
  }

  /** Drops everything asked and not yet answered; those who wait get a CutOff. */
  cutOff(): void {
    if (this.busy) this.end(new CutOff());
  }

  private post(message: ToWorker): void {
    this.worker?.postMessage(message);
  }

  private deliver(message: Extract<FromWorker, { kind: 'answers' }>): void {
    const waiting = this.waiting.get(message.id);
    this.waiting.delete(message.id);
    waiting?.resolve({ answers: message.answers, solve_ms: message.solve_ms });
  }

  private end(error: Error): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.ready = undefined;
    const all = [...this.waiting.values()];
    this.waiting.clear();
    for (const waiting of all) waiting.reject(error);
  }
}
