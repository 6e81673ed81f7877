// A rig's document, changed without touching what is not meant: tables, lists and texts as
// docs/rig-file.md has them. The engine alone says whether it is a rig.
import type { DocumentTable, DocumentValue } from '../../engine/answers';

export type Path = readonly (string | number)[];

/** "riggers[0].clips[1].setback", as the engine's problems name a key. */
export function pathText(path: Path): string {
  return path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');
}

/** Whether a problem's path is the key itself or something under it. */
export function isWithin(problemPath: string | null | undefined, path: Path): boolean {
  const at = pathText(path);
  return problemPath === at || Boolean(problemPath?.startsWith(`${at}.`) || problemPath?.startsWith(`${at}[`));
}

export function isTable(value: DocumentValue | undefined): value is DocumentTable {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function valueAt(document: DocumentTable, path: Path): DocumentValue | undefined {
  let value: DocumentValue | undefined = document;
  for (const key of path) {
    if (typeof key === 'number') value = Array.isArray(value) ? value[key] : undefined;
    else value = isTable(value) ? value[key] : undefined;
  }
  return value;
}

/** The text of a field; "" for a key that is not there. */
export function textAt(document: DocumentTable, path: Path): string {
  const value = valueAt(document, path);
  return value === undefined || value === null || typeof value === 'object' ? '' : String(value);
}

/** The table of a part; a part that is written as a text alone stands for { from }. */
export function tableAt(document: DocumentTable, path: Path): DocumentTable {
  const value = valueAt(document, path);
  if (typeof value === 'string' && value !== '') return { from: value };
  return isTable(value) ? value : {};
}

export function tablesAt(document: DocumentTable, path: Path): DocumentTable[] {
  const value = valueAt(document, path);
  return Array.isArray(value) ? value.filter(isTable) : [];
}

export function has(document: DocumentTable, path: Path): boolean {
  const value = valueAt(document, path);
  return value !== undefined && value !== null && value !== '';
}

/** A document with one value changed; undefined takes the key, or the item of a list, away. */
export function put(document: DocumentTable, path: Path, value: DocumentValue | undefined): DocumentTable {
  return putIn(document, path, value) as DocumentTable;
}

function putIn(at: DocumentValue | undefined, path: Path, value: DocumentValue | undefined): DocumentValue {
  const [key, ...rest] = path;
  if (key === undefined) return value ?? null;
  if (typeof key === 'number') {
    const list = Array.isArray(at) ? [...at] : [];
    if (rest.length === 0 && value === undefined) list.splice(key, 1);
    else list[key] = putIn(list[key], rest, value);
    return list;
  }
  const table: DocumentTable = isTable(at) ? { ...at } : typeof at === 'string' && at ? { from: at } : {};
  if (rest.length === 0 && value === undefined) delete table[key];
  else table[key] = putIn(table[key], rest, value);
  return table;
}

/** A list without one of its items; the key goes with the last. */
export function withoutItem(document: DocumentTable, list: Path, index: number): DocumentTable {
  const rest = tablesAt(document, list).filter((_item, i) => i !== index);
  return put(document, list, rest.length > 0 ? rest : undefined);
}

/** What was taken out of a list, put back where it was. */
export function withItem(document: DocumentTable, list: Path, index: number, item: DocumentTable): DocumentTable {
  const items = tablesAt(document, list);
  return put(document, list, [...items.slice(0, index), item, ...items.slice(index)]);
}

/** A table without some keys. */
export function without(table: DocumentTable, keys: readonly string[]): DocumentTable {
  return Object.fromEntries(Object.entries(table).filter(([key]) => !keys.includes(key)));
}

/** Only some keys of a table. */
export function only(table: DocumentTable, keys: readonly string[]): DocumentTable {
  return Object.fromEntries(Object.entries(table).filter(([key]) => keys.includes(key)));
}
