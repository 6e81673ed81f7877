// Giving a rig another name without touching the rest of its text: remarks stay, if they can.
import type { DocumentTable, RigAnswer } from '../engine/answers';
import { isProblem, type Desk } from '../engine/desk';

export type Asks = Pick<Desk, 'ask'>;

function tomlText(text: string): string {
  // eslint-disable-next-line no-control-regex
  const escaped = text.replace(/["\\]/g, '\\$&').replace(/[\u0000-\u001f\u007f]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
  return `"${escaped}"`;
}

/** The text with another name at its top. A guess: the caller has the engine read what came of it. */
export function putName(toml: string, name: string): string {
  const lines = toml.split('\n');
  const heading = lines.findIndex((line) => /^\s*\[/.test(line));
  const end = heading < 0 ? lines.length : heading;
  const pattern = /^(\s*name\s*=\s*)("(?:[^"\\]|\\.)*"|'[^']*')(.*)$/s;
  const at = lines.findIndex((line, i) => i < end && pattern.test(line));
  if (at >= 0) {
    lines[at] = (lines[at] ?? '').replace(pattern,
      (_all, before: string, _old: string, behind: string) => before + tomlText(name) + behind);
    return lines.join('\n');
  }
  const first = lines.findIndex((line) => !/^\s*(#|$)/.test(line));
  const place = first < 0 ? lines.length : first;
  lines.splice(place, 0, `name = ${tomlText(name)}`, ...(place === heading ? [''] : []));
  return lines.join('\n');
}

function withoutName(document: DocumentTable): string {
  const { name: _name, ...rest } = document;
  return JSON.stringify(rest);
}

/** Reads a rig's text under another name. Throws what the engine says if that cannot be. */
export async function renamed(desk: Asks, rig: RigAnswer, toml: string, name: string): Promise<RigAnswer> {
  const text = putName(toml, name);
  const read = await desk.ask({ question: 'rig_read', rig_toml: text });
  const kept = !isProblem(read) && read.facts.name === name &&
    withoutName(read.document) === withoutName(rig.document);
  if (kept) return { ...read, toml: text };
  return written(desk, { ...rig.document, name });
}

/** Has a document written as a rig's text. Throws what the engine says if that cannot be. */
export async function written(desk: Asks, document: DocumentTable): Promise<RigAnswer> {
  const outcome = await desk.ask({ question: 'rig_write', document });
  if (isProblem(outcome)) throw new Error(`${outcome.problem.message} ${outcome.problem.remedy}`.trim());
  return outcome;
}
