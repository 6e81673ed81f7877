// The riggers that are compared, each with a letter of its own.
import type { CompareAnswer, ComparedRig, RigFacts } from '../engine/answers';
import type { GoodRig } from '../state/app';
import type { Chased } from '../state/chase';
import type { Shower } from '../state/shown';
import { capital } from '../state/words';

export interface Row {
  key: string;
  letter: string;
  rigger: RigFacts['riggers'][number];
  figures: ComparedRig;
  banded: boolean;
  /** Count and depth of the ball, m, as a line to draw. */
  curve: [count_m: number, depth_m: number][];
}

/** The engine compares at most so many counts at a time. */
export const MOST_COUNTS = 12;

/** Counts for a line to draw: from shallow to the deepest compared, or to the end of the reel. */
export function curveCounts(facts: RigFacts, deepest_m: number): number[] {
  const reel_m = Math.max(...facts.riggers.map(({ line_on_reel_m }) => line_on_reel_m));
  const last_m = Math.min(deepest_m, reel_m);
  return Array.from({ length: MOST_COUNTS }, (_, i) => (last_m * (i + 1)) / MOST_COUNTS);
}

function letterOf(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + (index % 26));
}

function pointsOf(figures: ComparedRig | undefined): [number, number][] {
  if (!figures) return [];
  return figures.counts_m.flatMap((count_m, i): [number, number][] => {
    const depth = figures.depth_m[i];
    return depth ? [[count_m, depth.median]] : [];
  });
}

/** One row a rigger, in the order of the rigs. */
export function rowsOf(rigs: GoodRig[], view: Map<string, Chased<CompareAnswer>>,
  curves: Map<string, Chased<CompareAnswer>>): Row[] {
  const rows: Row[] = [];
  for (const { id, facts } of rigs) {
    const chased = view.get(id);
    chased?.answer?.rigs.forEach((figures, i) => {
      const rigger = facts.riggers[i];
      if (!rigger) return;
      const points = pointsOf(curves.get(id)?.answer?.rigs[i]);
      rows.push({ key: `${id} ${rigger.name}`, letter: letterOf(rows.length), rigger, figures,
        banded: chased.draws > 0, curve: points.length > 0 ? points : pointsOf(figures) });
    });
  }
  return rows;
}

/** "A ball 1 lb heavier: 1.3 ft deeper." */
export function gainSentence({ text, depth_m }: ComparedRig['gains'][number], shower: Shower): string {
  const written = shower.quantity(Math.abs(depth_m), 'length');
  const nothing = Number(shower.number(depth_m, 'length')) === 0;
  return `${capital(text)}: ${nothing ? 'no deeper' : `${written} ${depth_m > 0 ? 'deeper' : 'shallower'}`}.`;
}
