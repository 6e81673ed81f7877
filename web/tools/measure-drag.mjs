// How long a frame takes while a finger drags the count: the main thread's time at six times slower,
// plus six times the worker's time (the browser's throttling does not slow a worker). Real touch
// events, one a frame. Prints the median and the 99th percentile; and beside them, from the same run,
// those of the least page there can be: one that only writes two words anew for each touch.
//
//   node tools/measure-drag.mjs ADDRESS [RIG.toml]
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { chromiumOptions } from './chromium.mjs';

const SLOWER = 6;
const MOVES = 600;
const LEAST_FRAMES = 300;

const [address, rigFile] = process.argv.slice(2);
if (!address) {
  console.error('Say the address of the page: node tools/measure-drag.mjs http://127.0.0.1:8470/');
  process.exit(2);
}

/**
 * The outermost tasks of one thread, in order: when they began and the processor's time they took,
 * ms. That time has the slowing in it, but not what other programs took from this one.
 */
function tasksOf(events, thread) {
  const all = events
    .filter((e) => e.pid === thread.pid && e.tid === thread.tid && e.ph === 'X' &&
      (e.name === 'RunTask' || e.name === 'ThreadControllerImpl::RunTask'))
    .sort((a, b) => a.ts - b.ts || b.dur - a.dur);
  const tasks = [];
  let end = 0;
  for (const e of all) {
    if (e.ts < end) continue;
    end = e.ts + (e.dur ?? 0);
    tasks.push({ at: e.ts / 1000, ms: (e.tdur ?? e.dur ?? 0) / 1000, wall: (e.dur ?? 0) / 1000 });
  }
  return tasks;
}

function threads(events, name) {
  return events.filter((e) => e.name === 'thread_name' && e.args?.name === name)
    .map((e) => ({ pid: e.pid, tid: e.tid }));
}

/** The renderer that did the page's work: the one with most main-thread frames. */
function busiestMain(events) {
  const count = (thread) => events.filter((e) =>
    e.pid === thread.pid && e.tid === thread.tid && e.name === 'FireAnimationFrame' ||
    e.name === 'BeginMainThreadFrame' && e.pid === thread.pid && e.tid === thread.tid).length;
  return threads(events, 'CrRendererMain').sort((a, b) => count(b) - count(a))[0];
}

function sumBetween(tasks, from, to) {
  let sum = 0;
  for (const task of tasks) if (task.at >= from && task.at < to) sum += task.ms;
  return sum;
}

function quantile(sorted, part) {
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
}

/** A page that does nothing but write a word for the touch and another for a worker's reply. */
const LEAST_PAGE = `<!doctype html><meta name="viewport" content="width=device-width">
<div role="slider" aria-label="Count" tabindex="0" style="height:60px;touch-action:none">100</div><p>0</p>
<script>
  const slider = document.querySelector('[role=slider]');
  const words = document.querySelector('p').firstChild;
  const reply = 'onmessage = (e) => postMessage("reply " + e.data)';
  const worker = new Worker(URL.createObjectURL(new Blob([reply])));
  worker.onmessage = (e) => { words.data = e.data; };
  slider.addEventListener('pointermove', (e) => {
    slider.firstChild.data = e.clientX.toFixed(1);
    worker.postMessage(e.clientX);
  });
</script>`;

/** Drags the count to and fro. \return the trace's events. */
async function trace(page) {
  const tape = page.getByRole('slider', { name: 'Count' });
  await tape.waitFor();
  await page.waitForTimeout(1000);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  const events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'devtools.timeline.frame', 'disabled-by-default-devtools.timeline.frame', 'cc', 'benchmark', 'toplevel', '__metadata'] },
  });
  const box = await tape.boundingBox();
  const y = box.y + box.height / 2;
  const middle = box.x + box.width / 2;
  const touch = (type, x) => session.send('Input.dispatchTouchEvent',
    { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
  await touch('touchStart', middle);
  for (let i = 0; i < MOVES; i += 1) {
    // To and fro over 100 px, about three marks of the counter a frame.
    await touch('touchMove', middle + 100 * Math.sin(i / 12));
    await page.waitForTimeout(12);
  }
  await touch('touchEnd', middle);
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await complete;
  return events;
}

/** \return what each frame took, ms; none when too few were seen to say anything. */
function framesOf(events) {
  const main = busiestMain(events);
  const mainTasks = tasksOf(events, main);
  const workerTasks = threads(events, 'DedicatedWorker thread').filter((t) => t.pid === main.pid)
    .flatMap((thread) => tasksOf(events, thread));
  const starts = events
    .filter((e) => e.pid === main.pid && e.tid === main.tid && e.name === 'BeginMainThreadFrame')
    .map((e) => e.ts / 1000).sort((a, b) => a - b)
    // One frame may be told of by two categories.
    .filter((at, i, all) => i === 0 || at - all[i - 1] > 3);
  const rows = starts.slice(0, -1).map((from, i) => {
    const mainMs = sumBetween(mainTasks, from, starts[i + 1]);
    const workerMs = sumBetween(workerTasks, from, starts[i + 1]);
    return { mainMs, workerMs, all: mainMs + SLOWER * workerMs };
  });
  if (rows.length >= LEAST_FRAMES && workerTasks.length >= LEAST_FRAMES / 2) return rows;
  console.error(`Only ${rows.length} frames and ${workerTasks.length} worker tasks were seen: nothing can be said.`);
  process.exit(1);
}

/** Prints a page's figures. \return its median and 99 % of everything, ms. */
function report(title, rows) {
  const part = (key, q) => quantile(rows.map((row) => row[key]).sort((a, b) => a - b), q);
  console.log(`${title}: ${rows.length} frames while a finger drags, main thread ${SLOWER} times slower`);
  for (const [name, key] of [['main thread', 'mainMs'], ['worker, as it is', 'workerMs'],
    [`main thread + ${SLOWER} x worker`, 'all']]) {
    console.log(`  ${name.padEnd(28)} median ${part(key, 0.5).toFixed(1)} ms, 99 % ${part(key, 0.99).toFixed(1)} ms`);
  }
  return { median: part('all', 0.5), high: part('all', 0.99) };
}

const browser = await chromium.launch(chromiumOptions());
const context = await browser.newContext({
  viewport: { width: 360, height: 740 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true,
});
const least = await context.newPage();
await least.setContent(LEAST_PAGE);
const floor = report('The least page', framesOf(await trace(least)));
await least.close();

const page = await context.newPage();
if (rigFile) {
  const stored = { format: 'offplumb-page', version: 1, activeRig: 'measured',
    rigs: [{ id: 'measured', toml: readFileSync(rigFile, 'utf8') }] };
  await page.addInitScript((text) => localStorage.setItem('offplumb', text), JSON.stringify(stored));
}
await page.goto(address);
await page.locator('html[data-engine="ready"]').waitFor();
const ours = report('This page', framesOf(await trace(page)));
console.log(`This page to the least page: ${(ours.median / floor.median).toFixed(1)} (median), ${(ours.high / floor.high).toFixed(1)} (99 %)`);
const good = ours.median < 16 && ours.high < 50;
console.log(good ? 'within 16 ms and 50 ms' : 'NOT within 16 ms (median) and 50 ms (99 %)');
await browser.close();
process.exit(good ? 0 : 1);
