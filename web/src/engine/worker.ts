// A worker with one engine in it, so that the page stays smooth while it solves.
import createEngine from 'offplumb-engine';
import type { FromWorker, ToWorker } from './messages';
import { startEngine, type Ask } from './module';

const scope = self as unknown as DedicatedWorkerGlobalScope;
let ask: Ask | undefined;

function say(message: FromWorker): void {
  scope.postMessage(message);
}

async function start(compiled: WebAssembly.Module): Promise<void> {
  try {
    ask = await startEngine(createEngine, compiled);
    say({ kind: 'ready' });
  } catch (error) {
    say({ kind: 'failed', words: error instanceof Error ? error.message : String(error) });
  }
}

function answer(id: number, requests: string[]): void {
  if (!ask) return;
  try {
    const from = performance.now();
    const answers = requests.map(ask);
    say({ kind: 'answers', id, answers, solve_ms: performance.now() - from });
  } catch (error) {
    // An engine that trapped is not to be asked again.
    ask = undefined;
    say({ kind: 'failed', words: error instanceof Error ? error.message : String(error) });
  }
}

scope.onmessage = (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.kind === 'start') void start(message.compiled);
  else answer(message.id, message.requests);
};
