// The native program and the WebAssembly engine give the same answers to 200 requests.
//
//   node tests/parity/parity.mjs PROGRAM ENGINE_FOLDER
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { makeCases } from './cases.mjs';
import { compare, TOLERANCE } from './compare.mjs';

const FEWEST_ANSWERED = 120;
const [program, engineFolder] = process.argv.slice(2);
if (!program || !engineFolder) {
  console.error('Say the program and the folder of offplumb.mjs: parity.mjs PROGRAM ENGINE_FOLDER');
  process.exit(2);
}
const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

function nativeAnswers(requests) {
  const lines = requests.map((request) => JSON.stringify(request)).join('\n');
  const run = spawnSync(program, ['ask'], { input: `${lines}\n`, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.error) throw run.error;
  return run.stdout.trimEnd().split('\n').map((line) => JSON.parse(line));
}

async function wasmAsk() {
  const { default: create } = await import(pathToFileURL(join(engineFolder, 'offplumb.mjs')).href);
  const engine = await create({ wasmBinary: readFileSync(join(engineFolder, 'offplumb.wasm')) });
  return (request) => {
    const text = JSON.stringify(request);
    const bytes = engine.lengthBytesUTF8(text) + 1;
    const address = engine._malloc(bytes);
    engine.stringToUTF8(text, address, bytes);
    const answer = engine.UTF8ToString(engine._offplumb_ask(address));
    engine._free(address);
    return JSON.parse(answer);
  };
}

const requests = makeCases(root);
const native = nativeAnswers(requests);
const ask = await wasmAsk();
if (native.length !== requests.length) {
  console.error(`${requests.length} requests, but ${native.length} answers of the native program`);
  process.exit(1);
}
let worst = 0;
let faults = 0;
let answered = 0;
const seen = {};
requests.forEach((request, i) => {
  const wasm = ask(request);
  const kind = 'problem' in wasm ? wasm.problem.kind : 'answered';
  seen[kind] = (seen[kind] ?? 0) + 1;
  if (kind === 'answered') answered += 1;
  worst = Math.max(worst, compare(native[i], wasm, (path, words) => {
    faults += 1;
    if (faults < 20) console.error(`request ${i} (${request.question})${path}: ${words}`);
  }));
});
console.log(`${requests.length} requests: ${JSON.stringify(seen)}`);
console.log(`largest difference ${worst.toExponential(2)} of the value or of 1 (allowed: ${TOLERANCE})`);
if (answered < FEWEST_ANSWERED) {
  console.error(`Only ${answered} were answered: too few to say anything`);
  process.exit(1);
}
process.exit(faults === 0 ? 0 : 1);
