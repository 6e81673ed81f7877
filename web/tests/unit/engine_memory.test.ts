// The engine's own memory stays as large as it was: nothing is kept of an answer.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import createEngine from 'offplumb-engine';
import { expect, inject, test } from 'vitest';
import { askOf } from '../../src/engine/module';
import { oneRigger } from './example_rigs';

test('ten thousand solves need no more memory than the first two hundred', async () => {
  const compiled = await WebAssembly.compile(
    new Uint8Array(await readFile(join(inject('engineFolder'), 'offplumb.wasm'))));
  const memories: WebAssembly.Memory[] = [];
  const engine = await createEngine({
    instantiateWasm(imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void) {
      void WebAssembly.instantiate(compiled, imports).then((instance) => {
        memories.push(...Object.values(instance.exports)
          .filter((part): part is WebAssembly.Memory => part instanceof WebAssembly.Memory));
        done(instance);
      });
      return {};
    },
  });
  const ask = askOf(engine);
  const solve = (i: number): void => {
    const answer = ask(JSON.stringify({ question: 'depth', rig_toml: oneRigger, count_m: 20 + (i % 50) * 0.3,
      speed_mps: 1 + (i % 7) * 0.1, bands: i % 50 === 0, draws: 8, shape: true, units: 'feet' }));
    if (!answer.includes('"main_line"')) throw new Error(answer);
  };
  for (let i = 0; i < 200; i += 1) solve(i);
  const bytes = (): number => memories.reduce((sum, memory) => sum + memory.buffer.byteLength, 0);
  const before = bytes();
  expect(before).toBeGreaterThan(0);
  for (let i = 0; i < 10_000; i += 1) solve(i);
  expect(bytes()).toBe(before);
}, 240_000);
