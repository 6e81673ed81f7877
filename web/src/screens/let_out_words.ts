// What the answer of "count" says, in words. Figures come from the engine, digits from the shower.
import type { Band, RiggerCount, Remedy, RigFacts } from '../engine/answers';
import type { Shower } from '../state/shown';
import { capital, lureName, reachEnd } from '../state/words';

type RiggerFacts = RigFacts['riggers'][number];

/** Whose depth was asked for: "the ball", "the low lure". */
export function wantedThing(count: RiggerCount, rigger: RiggerFacts): string {
  return count.of === 'ball' ? 'the ball' : lureName(rigger.clips, askedClip(count, rigger));
}

function askedClip(count: RiggerCount, rigger: RiggerFacts): number {
  return Math.max(0, rigger.clips.findIndex(({ name }) => name === count.clip));
}

export interface There {
  name: string;
  words: string;
  /** It hangs, or may hang, deeper than what was asked for. */
  deeper: boolean;
}

/** Where the rest of the gear is at the count found. */
export function restOfGear(count: RiggerCount, rigger: RiggerFacts, shower: Shower): There[] {
  if (!count.at_count) return [];
  const rest: There[] = [];
  const add = (name: string, band: Band): void => {
    rest.push({ name, words: shower.band(band, 'depth'), deeper: band.high > count.wanted_depth_m });
  };
  if (count.of === 'lure') add('Ball', count.at_count.ball_depth_m);
  count.at_count.lures.forEach(({ depth_m }, i) => {
    if (count.of === 'lure' && i === askedClip(count, rigger)) return;
    add(capital(lureName(rigger.clips, i).replace(/^the /, '')), depth_m);
  });
  return rest;
}

/** How far the line leans at the boom. */
export function leanWords(count: RiggerCount, shower: Shower): string | undefined {
  if (count.angle_boom_deg === null) return undefined;
  return shower.quantity((count.angle_boom_deg * Math.PI) / 180, 'angle');
}

/** The band in words: "101 to 117", "103 to 211 or more"; nothing when it looks like the median. */
export function bandWords(count: RiggerCount, shower: Shower): string | undefined {
  if (!count.count_m) return undefined;
  const ends = shower.ends(count.count_m, 'depth');
  return count.count_high_open ? `${ends ?? shower.number(count.count_m.median, 'depth')} or more` : ends;
}

/** "No count puts the lure at 300 ft." */
export function refusal(count: RiggerCount, rigger: RiggerFacts, wanted: string): string {
  return `No count puts ${wantedThing(count, rigger)} at ${wanted}.`;
}

/** Why: how deep it goes, and what ends it. */
export function reachWords(count: RiggerCount, rigger: RiggerFacts, shower: Shower): string {
  return `The deepest ${wantedThing(count, rigger)} goes: ${shower.band(count.reach_depth_m, 'depth')}, ` +
    `at a count of ${shower.quantity(count.reach_count_m, 'depth')}, ` +
    `${reachEnd(count.reach_ends_by, rigger.largest_boom_angle_deg, shower)}.`;
}

export function remedySentence({ what, text }: Remedy): string {
  switch (what) {
    case 'slower': return `It gets there at ${text}.`;
    case 'heavier_ball': case 'thinner_line': case 'no_flasher': return `It gets there with ${text}.`;
    case 'more_line': return `${capital(text)}: then it gets there.`;
    default: return `What gets it there: ${text}.`;
  }
}

export const NO_REMEDY =
  'Nothing usual gets it there: no slower speed, heavier ball or thinner line alone.';

/** The whole answer for one who listens. */
export function spokenWords(count: RiggerCount, rigger: RiggerFacts, shower: Shower, wanted: string): string {
  if (!count.count_m) return `${rigger.name}: ${refusal(count, rigger, wanted)}`;
  const band = bandWords(count, shower);
  return `${rigger.name}: let out ${shower.quantity(count.count_m.median, 'depth')}` +
    `${band ? `, ${band}` : ''}.`;
}
