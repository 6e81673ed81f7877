// The rigs that the page keeps. The text of the rig file is the one truth; the rest is read from it.
import type { RigFacts } from '../engine/answers';
import type { Hand } from './sea';

/** What is written to the browser's storage and to an export. */
export interface StoredRig {
  id: string;
  toml: string;
}

export function newId(): string {
  return globalThis.crypto?.randomUUID?.() ?? `${Date.now()}-${Math.random().toString(36).slice(2)}`;
}

/** Whether two names are one to a person: capitals and blanks around do not matter. */
export function sameName(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

/** "My boat" becomes "My boat (2)" where there is one already. */
export function freeName(name: string, taken: string[]): string {
  const isTaken = (candidate: string): boolean => taken.some((other) => sameName(other, candidate));
  if (!isTaken(name)) return name;
  const stem = name.replace(/ \(\d+\)$/, '');
  for (let i = 2; ; i += 1) {
    const candidate = `${stem} (${i})`;
    if (!isTaken(candidate)) return candidate;
  }
}

/** What a rig's text calls it, where the engine could not read it: for a list of the kept rigs. */
export function nameInText(toml: string): string | undefined {
  const top = toml.split(/^\s*\[/m, 1)[0] ?? '';
  const quoted = /^\s*name\s*=\s*(?:"([^"\n]*)"|'([^'\n]*)')/m.exec(top);
  return (quoted?.[1] ?? quoted?.[2]) || undefined;
}

/** A rig put back where it was, or at the end of a list that is shorter now. */
export function putBack<T extends StoredRig>(rigs: T[], rig: T, index: number): T[] {
  if (rigs.some((other) => other.id === rig.id)) return rigs;
  return [...rigs.slice(0, index), rig, ...rigs.slice(index)];
}

/**
 * What is in hand, when the rig in use has its riggers renamed: counts and balls go with the rigger.
 * With riggers added or removed nothing is moved.
 */
export function carryHand(hand: Hand, before: RigFacts, after: RigFacts): Hand {
  if (before.riggers.length !== after.riggers.length) return hand;
  const carry = (values: Record<string, number>): Record<string, number> => {
    const carried = { ...values };
    before.riggers.forEach(({ name }) => delete carried[name]);
    after.riggers.forEach(({ name }, i) => {
      const value = values[before.riggers[i]?.name ?? ''];
      if (value !== undefined) carried[name] = value;
    });
    return carried;
  };
  const index = before.riggers.findIndex(({ name }) => name === hand.rigger);
  return {
    ...hand,
    counts_m: carry(hand.counts_m),
    balls_kg: carry(hand.balls_kg),
    rigger: after.riggers[index]?.name ?? hand.rigger,
  };
}
