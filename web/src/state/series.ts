// Evenly spaced values, "from 20 ft to 240 ft by 20 ft": the engine's own rule for such a list.

export interface Series {
  /** All in one SI unit. */
  from: number;
  to: number;
  by: number;
}

/** More than these are a slip of the pen. */
export const MOST_VALUES = 1000;
/** So that 1.5 to 4.5 by 0.1 ends where it says. */
const HAIR = 1e-9;

/** The values; none when the step does not lead from the first up to the last. */
export function valuesOf({ from, to, by }: Series): number[] | undefined {
  const count = Math.floor((to - from) / by + HAIR) + 1;
  if (!(by > 0 && to >= from && count <= MOST_VALUES)) return undefined;
  return Array.from({ length: count }, (_, i) => from + i * by);
}

/** The inverse; of one value alone the step is that value. */
export function seriesOf(values: readonly number[]): Series | undefined {
  const [from, next] = values;
  const to = values.at(-1);
  if (from === undefined || to === undefined) return undefined;
  return { from, to, by: next === undefined ? from : next - from };
}
