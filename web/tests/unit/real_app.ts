// The page's model on the real engine, for tests in Node.js.
import { readFileSync } from 'node:fs';
import type { Desk } from '../../src/engine/desk';
import type { Request } from '../../src/engine/requests';
import { App } from '../../src/state/app';
import { Storage } from '../../src/state/storage';
import type { Shelf } from '../../src/state/shelf';
import { realEngine } from '../engine';
import { MemoryShelf } from './state/memory_shelf';

export function exampleRig(name: string): string {
  return readFileSync(new URL(`../../../examples/rigs/${name}.toml`, import.meta.url), 'utf8');
}

/** A desk that answers at once, from the engine in this process. */
export async function realDesk(): Promise<Pick<Desk, 'ask'>> {
  const answer = await realEngine();
  return { ask: async <R extends Request>(request: R) => answer(request) };
}

/** \p rigs: what it starts with. `say` collects what the person is told. */
export async function realApp(rigs: string[], desk?: Pick<Desk, 'ask'>, shelf: Shelf = new MemoryShelf()) {
  const app = await App.open((desk ?? await realDesk()) as Desk, new Storage(shelf), rigs);
  const said: string[] = [];
  app.state.watch(() => {
    const words = app.state.get().notice?.words;
    if (words !== undefined && said[said.length - 1] !== words) said.push(words);
  });
  const undo = (): void => app.state.get().notice?.undo?.();
  const names = (): string[] => app.state.get().rigs.map((rig) => rig.facts?.name ?? '?');
  return { app, said, undo, names };
}
