// The texts of the example rigs.
import { readFileSync } from 'node:fs';

function text(name: string): string {
  return readFileSync(new URL(`../../../examples/rigs/${name}.toml`, import.meta.url), 'utf8');
}

export const oneRigger = text('one-rigger');
export const twoRiggers = text('two-riggers');
