// What a new rig, rigger or clip starts from: plain things of the catalogue and plain places. The
// places, lengths and weights are common practice, no source; each is there to be measured.
import type { DocumentTable, UnitChoice } from '../../engine/answers';
import { sameName } from '../../state/rigs';
import type { Choice } from './catalogue';
import { put, tableAt, tablesAt, textAt, type Path } from './document';

interface Plain {
  aft: string; out: string; up: string; reel: string; weight: string; aboveBall: string; setback: string;
  leader: string; rodAhead: string; rodOut: string; rodUp: string; apart: number; apartUnit: string;
}

const FEET: Plain = {
  aft: '2 ft', out: '4 ft', up: '3 ft', reel: '400 ft', weight: '12 lb', aboveBall: '4 ft', setback: '20 ft',
  leader: '42 in', rodAhead: '1 ft', rodOut: '5 ft', rodUp: '6.5 ft', apart: 20, apartUnit: 'ft',
};
const METRIC: Plain = {
  aft: '0.6 m', out: '1.2 m', up: '0.9 m', reel: '120 m', weight: '5.5 kg', aboveBall: '1.2 m', setback: '6 m',
  leader: '1.1 m', rodAhead: '0.3 m', rodOut: '1.5 m', rodUp: '2 m', apart: 6, apartUnit: 'm',
};

export function plainOf(units: UnitChoice): Plain {
  return units === 'metric' ? METRIC : FEET;
}

/** The wanted thing, if the catalogue has it; else its first. */
export function fromCatalogue(choices: Choice[], wanted: string): DocumentTable {
  return { from: choices.find(({ id }) => id === wanted)?.id ?? choices[0]?.id ?? wanted };
}

interface Gear {
  lines: Choice[];
  flashers: Choice[];
  lures: Choice[];
}

export function plainClip(gear: Gear, units: UnitChoice, side: string): DocumentTable {
  const plain = plainOf(units);
  return {
    above_ball: plain.aboveBall,
    rod_tip: { ahead: plain.rodAhead, [side]: plain.rodOut, up: plain.rodUp },
    fishing_line: fromCatalogue(gear.lines, 'nylon-0.55mm'),
    setback: plain.setback,
    flasher: fromCatalogue(gear.flashers, 'flasher-rotating-11in'),
    leader: plain.leader,
    leader_line: fromCatalogue(gear.lines, 'nylon-0.7mm'),
    lure: fromCatalogue(gear.lures, 'hoochie'),
  };
}

export function plainRig(gear: Gear, units: UnitChoice, name: string): DocumentTable {
  const plain = plainOf(units);
  return {
    name,
    riggers: [{
      name: 'port',
      boom_tip: { aft: plain.aft, port: plain.out, up: plain.up },
      line: fromCatalogue(gear.lines, 'wire-1x7-0.8mm'),
      line_on_reel: plain.reel,
      ball: { weight: plain.weight, shape: 'sphere' },
      clips: [plainClip(gear, units, 'port')],
    }],
  };
}

/** The same place on the other side of the boat. */
function mirrored(place: DocumentTable): DocumentTable {
  return Object.fromEntries(Object.entries(place).map(([key, value]) =>
    [key === 'port' ? 'starboard' : key === 'starboard' ? 'port' : key, value]));
}

/** Another rigger: the last one's gear on the other side. */
export function withRigger(document: DocumentTable): DocumentTable {
  const riggers = tablesAt(document, ['riggers']);
  const last = riggers[riggers.length - 1] ?? {};
  const names = riggers.map((rigger) => textAt(rigger, ['name']));
  const name = ['port', 'starboard', 'centre'].find((word) => !names.some((other) => sameName(other, word))) ??
    `rigger ${riggers.length + 1}`;
  const { counter_marks: _marks, ...gear } = last;
  const copy: DocumentTable = { ...gear, name, boom_tip: mirrored(tableAt(last, ['boom_tip'])) };
  if (Array.isArray(last['clips'])) {
    copy['clips'] = tablesAt(last, ['clips']).map((clip) =>
      ({ ...clip, rod_tip: mirrored(tableAt(clip, ['rod_tip'])) }));
  }
  return put(document, ['riggers', riggers.length], copy);
}

/** A length some way above another: "24 ft" above "4 ft"; both as texts. */
function higher(aboveBall: string, units: UnitChoice): string {
  const plain = plainOf(units);
  const match = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s*$/i.exec(aboveBall);
  const unit = match?.[2]?.toLowerCase();
  const apart = unit === 'ft' ? FEET.apart : unit === 'm' ? METRIC.apart : undefined;
  if (!match || apart === undefined) return `${plain.apart + 4} ${plain.apartUnit}`;
  return `${Number((Number(match[1]) + apart).toFixed(3))} ${unit}`;
}

/** Another clip, stacked above the highest written: the last one's tackle. */
export function withClip(document: DocumentTable, rigger: Path, gear: Gear, units: UnitChoice): DocumentTable {
  const clips = tablesAt(document, [...rigger, 'clips']);
  const last = clips[clips.length - 1];
  const path = [...rigger, 'clips', clips.length];
  if (!last) {
    const side = 'starboard' in tableAt(document, [...rigger, 'boom_tip']) ? 'starboard' : 'port';
    return put(document, path, plainClip(gear, units, side));
  }
  const { name: _name, ...tackle } = last;
  const taken = clips.some((clip) => sameName(textAt(clip, ['name']), 'stacked'));
  return put(document, path, {
    ...(taken ? {} : { name: 'stacked' }), ...tackle, above_ball: higher(textAt(last, ['above_ball']), units),
  });
}
