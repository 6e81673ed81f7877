// The real engine, for tests in Node.js.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import createEngine from 'offplumb-engine';
import { inject } from 'vitest';
import { askOf, type Ask } from '../src/engine/module';
import type { Outcome } from '../src/engine/desk';
import type { Request } from '../src/engine/requests';

declare module 'vitest' {
  interface ProvidedContext {
    engineFolder: string;
  }
}

/** From the text of a request to the text of its answer, as in the page's worker. */
export async function realAsk(): Promise<Ask> {
  const wasmBinary = await readFile(join(inject('engineFolder'), 'offplumb.wasm'));
  return askOf(await createEngine({ wasmBinary }));
}

/** The same with requests and answers as values. */
export async function realEngine(): Promise<<R extends Request>(request: R) => Outcome<R>> {
  const ask = await realAsk();
  return <R extends Request>(request: R) => JSON.parse(ask(JSON.stringify(request))) as Outcome<R>;
}
