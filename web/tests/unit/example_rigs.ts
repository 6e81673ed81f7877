// The texts of the example rigs.
import { readFileSync } from 'node:fs';

function text(name: string): string {
  return readFileSync(new URL(`../../../examples/rigs/${name}.toml`, import.meta.url), 'utf8');
}

export const oneRigger = text('one-rigger');
export const twoRiggers = text('two-riggers');

/** As many riggers as a rig may have: the two of the example, three times. */
export const sixRiggers = ['', ' middle', ' bow'].map((where, i) => twoRiggers
  .slice(i === 0 ? 0 : twoRiggers.indexOf('[[riggers]]'))
  .replace('name = "port"', `name = "port${where}"`)
  .replace('name = "starboard"', `name = "starboard${where}"`)).join('\n');
