// Weighs the built page as it goes over the wire, against web/budget.json.
//   node tools/budget.mjs           prints the weights; fails where one is over its budget
//   node tools/budget.mjs --set     writes the weights as the new budgets
// kB = 1000 bytes. gzip -9 is what the server sends; brotli stands beside it for hosts that can.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';
import { PAGE_OUT, PARTS_OUT, Refusal, WEB } from './settings.mjs';

const BUDGET = resolve(WEB, 'budget.json');
/** What a figure may grow before it is said. */
const TOLERANCE = 1.05;
/** The whole of the first load, whatever budget.json says. */
const FIRST_LOAD_AT_MOST = 300_000;

function weigh(file) {
  const bytes = readFileSync(join(PAGE_OUT, file));
  const quality = { params: { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY } };
  return {
    plain: bytes.length,
    // The program and not Node.js's own: that is what cmake/EmbedFolder.cmake packs with.
    gzip: execFileSync('gzip', ['-9', '-n', '-c'], { input: bytes, maxBuffer: 1e9 }).length,
    brotli: brotliCompressSync(bytes, quality).length,
  };
}

function sum(weights) {
  const add = (a, b) => ({
    plain: a.plain + b.plain, gzip: a.gzip + b.gzip, brotli: a.brotli + b.brotli });
  return weights.reduce(add, { plain: 0, gzip: 0, brotli: 0 });
}

function weighGroups(groups) {
  return Object.fromEntries(
    Object.entries(groups).map(([name, files]) => [name, sum(files.map(weigh))]));
}

function kB(bytes) {
  return (bytes / 1000).toFixed(1).padStart(8);
}

function print(title, weights) {
  console.log(`${title.padEnd(22)}   plain kB     gzip   brotli`);
  for (const [name, { plain, gzip, brotli }] of Object.entries(weights)) {
    console.log(`  ${name.padEnd(20)} ${kB(plain)}   ${kB(gzip)} ${kB(brotli)}`);
  }
}

function faultsOf(kind, weights, budgets) {
  const faults = [];
  for (const [name, { gzip }] of Object.entries(weights)) {
    const budget = budgets[name];
    if (budget === undefined) {
      faults.push(`${kind} "${name}" has no budget: ${gzip} bytes now`);
    } else if (gzip > budget * TOLERANCE) {
      faults.push(`${kind} "${name}": ${gzip} bytes, budget ${budget} and 5 %`);
    }
  }
  for (const name of Object.keys(budgets)) {
    if (!(name in weights)) faults.push(`${kind} "${name}" has a budget but is not built any more`);
  }
  return faults;
}

function gzipOnly(weights) {
  return Object.fromEntries(Object.entries(weights).map(([name, { gzip }]) => [name, gzip]));
}

function setBudgets(first, screens) {
  const budget = { unit: 'bytes, gzip -9', first_load: gzipOnly(first), screens: gzipOnly(screens) };
  writeFileSync(BUDGET, `${JSON.stringify(budget, null, 2)}\n`);
  console.log(`Written to ${BUDGET}. Say in the change why they grew.`);
}

function check(first, screens) {
  const budget = JSON.parse(readFileSync(BUDGET, 'utf8'));
  const whole = sum(Object.values(first)).gzip;
  const faults = [
    ...faultsOf('first load', first, budget.first_load),
    ...faultsOf('screen', screens, budget.screens),
  ];
  if (whole > FIRST_LOAD_AT_MOST) {
    faults.push(`the first load is ${whole} bytes in all; at most ${FIRST_LOAD_AT_MOST}`);
  }
  for (const fault of faults) console.error(`Over budget: ${fault}.`);
  if (faults.length > 0) {
    console.error('Make it lighter; or, if the weight is worth it: npm run budget -- --set');
    process.exitCode = 1;
  }
}

function main() {
  if (!existsSync(PARTS_OUT)) {
    throw new Refusal(`There is no built page in ${PAGE_OUT}. Build it first: npm run build`);
  }
  const parts = JSON.parse(readFileSync(PARTS_OUT, 'utf8'));
  const first = weighGroups(parts.first);
  const screens = weighGroups(parts.screens);
  print('First load', { ...first, 'in all': sum(Object.values(first)) });
  print('With a screen', screens);
  print('In the background', weighGroups({ 'sw.js': ['sw.js'] }));
  if (process.argv.includes('--set')) setBudgets(first, screens);
  else check(first, screens);
}

try {
  main();
} catch (error) {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 1;
}
