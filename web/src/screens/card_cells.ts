// What stands in each place of a card.
import type { Band, CardAnswer } from '../engine/answers';

/** The ball, or the lure of a clip, from the lowest. */
export type Thing = 'ball' | number;

/** Why a place has no depth: the line would lean too far, or nothing hangs there. */
export type Cell = Band | 'leans' | 'no place';

/** By speed, then by count, of the card's one rigger. */
export function gridOf(answer: CardAnswer, thing: Thing): Cell[][] {
  const rigger = answer.riggers[0];
  const depths = thing === 'ball' ? rigger?.ball_depth_m : rigger?.lures[thing]?.depth_m;
  return answer.speeds_mps.map((_, speed) => answer.counts_m.map((__, count): Cell => {
    const band = depths?.[speed]?.[count] ?? null;
    if (band === null) return 'no place';
    return rigger?.beyond_angle[speed]?.[count] ? 'leans' : band;
  }));
}

/** Today, as a card is dated: "2024-05-17". */
export function today(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
