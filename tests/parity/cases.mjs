// The requests on which the native program and the WebAssembly engine are compared: made from a
// fixed seed, so the same each time. Set-ups of the trade, one to six riggers, still water and
// currents, answers and refusals.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const FOOT = 0.3048;
const MPH = 0.44704;

/** Numbers in [0, 1) that look random (the "mulberry32" generator, public domain). */
function dice(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function sixRiggers() {
  const lines = ['wire-1x7-0.8mm', 'braid-0.5mm', 'wire-7x7-0.84mm'];
  const balls = ['ball-sphere-12lb', 'ball-finned-15lb', 'ball-flat-10lb'];
  let text = 'name = "Six riggers, invented"\ninvented = true\n';
  for (let i = 0; i < 6; i += 1) {
    text += `
[[riggers]]
name = "rigger ${i + 1}"
boom_tip = { aft = "2 ft", ${i % 2 ? 'port' : 'starboard'} = "${3 + i} ft", up = "3 ft" }
line = "${lines[i % 3]}"
ball = "${balls[i % 3]}"
[[riggers.clips]]
above_ball = "${3 + i} ft"
rod_tip = { ahead = "1 ft", ${i % 2 ? 'port' : 'starboard'} = "${4 + i} ft", up = "6 ft" }
fishing_line = "nylon-0.5mm"
setback = "${15 + 2 * i} ft"
lure = "spoon-small"
`;
  }
  return text;
}

/** \param root of the repository. \return the texts of the rigs that are asked about. */
function rigTexts(root) {
  const read = (name) => readFileSync(join(root, 'examples/rigs', name), 'utf8');
  return [read('one-rigger.toml'), read('two-riggers.toml'), read('engineer-tree-2.toml'), sixRiggers()];
}

function currentOf(roll) {
  if (roll() < 0.4) return null;
  const points = [];
  let depth_m = 0;
  for (let i = 0; i < 1 + Math.floor(roll() * 4); i += 1) {
    points.push({ depth_m, speed_mps: roll() * 0.5, toward_deg: roll() * 360 });
    depth_m += 4 + roll() * 20;
  }
  return { shape: roll() < 0.5 ? 'linear' : 'steps', points };
}

function seaOf(roll) {
  const overGround = roll() < 0.3;
  const course_deg = roll() * 360;
  return {
    speed_mps: (1 + roll() * 3.2) * MPH,
    speed_kind: overGround ? 'over_ground' : 'through_water',
    ...(overGround ? { course_deg } : {}),
    heading_deg: (course_deg + roll() * 20 - 10 + 360) % 360,
    current: currentOf(roll),
    water: roll() < 0.3 ? { temperature_C: 4 + roll() * 16, salinity_g_per_kg: roll() * 34 } : null,
  };
}

function wantedOf(roll) {
  const draws = [0, 4, 16, 128][Math.floor(roll() * 4)];
  return { bands: draws > 0, ...(draws > 0 ? { draws } : {}),
    units: ['feet', 'knots', 'metric'][Math.floor(roll() * 3)] };
}

const kinds = {
  depth: (roll) => ({ count_m: roll() * 150 * FOOT, shape: roll() < 0.7,
    ball_mass_kg: roll() < 0.3 ? 3 + roll() * 6 : null }),
  count: (roll) => ({ depth_m: (10 + roll() * 250) * FOOT, of: roll() < 0.5 ? 'ball' : 'lure' }),
  card: (roll) => ({ speeds_mps: [2, 2.6, 3.2].map((s) => s * MPH),
    counts_m: [30, 80, 140].map((c) => (c + roll()) * FOOT), sheet: roll() < 0.5, date: '2026-07-01' }),
  compare: () => ({ counts_m: [20, 40] }),
};

/** What is refused: nonsense, and what cannot be. */
function refusals(rigs) {
  const depth = { question: 'depth', rig_toml: rigs[0], count_m: 30, speed_mps: 1.2, bands: false };
  return [
    { ...depth, count_m: -1 }, { ...depth, count_m: 9999 }, { ...depth, speed_mps: 40 },
    { ...depth, count_m: 0.2 }, { ...depth, rigger: 'nobody' }, { ...depth, nonsense: 1 },
    { ...depth, rig_toml: 'name = "x"' }, { ...depth, rig_toml: '[[[[' }, { ...depth, units: 'cubits' },
    { ...depth, draws: 0, bands: true }, { ...depth, speed_mps: null }, { question: 'soup' },
    { ...depth, current: { shape: 'steps', points: [{ depth_m: 5, speed_mps: 1, toward_deg: 0 }] } },
  ];
}

/** What a page asks beside the questions, and the question that needs no rig. */
function helpers(rigs) {
  const leg = { ground_speed_mps: 1.4, course_deg: 40, seconds: 90, log_mps: 1.25 };
  const legs = [leg, { ...leg, ground_speed_mps: 1.02, course_deg: 221.5 }];
  const document = { name: 'Written', riggers: [{ name: 'port', ball: { from: 'ball-sphere-12lb',
    drag_area: '0.0123 m2' }, line: 'wire-1x7-0.8mm', boom_tip: { aft: '2 ft', up: '3.28084 ft' },
    line_on_reel: '123.456789 m' }] };
  return [
    { question: 'about' }, { question: 'two_way', legs }, { question: 'two_way', legs: [leg, leg] },
    { question: 'quantity', text: '1.1 fathom', dimension: 'length' },
    { question: 'quantity', text: '500 ft', dimension: 'length', low: 0.3, high: 100 },
    ...rigs.map((rig_toml) => ({ question: 'rig_read', rig_toml })),
    { question: 'rig_write', document }, { question: 'rig_write', document: { name: 5 } },
  ];
}

/** \return 200 requests. */
export function makeCases(root) {
  const roll = dice(20260701);
  const rigs = rigTexts(root);
  const cases = [...refusals(rigs), ...helpers(rigs)];
  const words = ['depth', 'depth', 'depth', 'count', 'count', 'card', 'compare'];
  while (cases.length < 200) {
    const question = words[cases.length % words.length];
    const rig = rigs[Math.floor(roll() * rigs.length)];
    const own = question === 'compare' ? { rigs_toml: [rig] } : { rig_toml: rig };
    const wanted = wantedOf(roll);
    // A whole band of a card or a comparison of six riggers takes many seconds and tells no more.
    if (question !== 'depth' && wanted.draws > 4) wanted.draws = 4;
    cases.push({ question, ...own, ...seaOf(roll), ...wanted, ...kinds[question](roll) });
  }
  return cases;
}
