// What the page keeps, as the text of one file: in the browser's storage and in an export. Nothing in
// it is ever thrown away for being unreadable: it is set aside under another key, and said.
import type { Settings } from './app';
import { checkedDrafts, type Draft } from './drafts';
import { newId, type StoredRig } from './rigs';
import type { CurrentPoint, Hand } from './sea';
import { LateWriter, onOtherWindow, setAside, shelfOfBrowser, type Shelf } from './shelf';

export interface Stored {
  rigs: StoredRig[];
  activeRig: string;
  /** What is not here is as on a first visit. */
  hand: Partial<Hand>;
  settings: Partial<Settings>;
}

/** A file of everything: what is kept, and what was being edited. */
export interface Everything extends Stored {
  drafts: Draft[];
  /** When the file was written, ISO 8601; files of an early page have none. */
  written?: string;
}

export interface Reading {
  everything: Everything;
  /** What could not be understood, in words; the rest can be used. */
  left: string[];
  /** Keys that this page does not know: of a newer one. They are kept. */
  unknown: Record<string, unknown>;
}

const FORMAT = 'offplumb-page';
const VERSION_WRITTEN = 1;
const KEY = 'offplumb';

export class Storage {
  /** What could not be read at the start, in words. */
  trouble: string | undefined;
  private readonly writer: LateWriter;
  private unknown: Record<string, unknown> = {};
  /** What is there could not be read nor set aside: it must not be written over. */
  private locked = false;

  constructor(private readonly shelf: Shelf | undefined) {
    this.writer = new LateWriter(shelf, KEY);
  }

  /** The browser's own; one that keeps nothing where the browser gives none. */
  static ofBrowser(): Storage {
    return new Storage(shelfOfBrowser());
  }

  read(): Stored | undefined {
    const text = this.shelf?.getItem(KEY);
    if (!text) return undefined;
    try {
      const { everything, left, unknown } = parseStored(text);
      this.unknown = unknown;
      if (left.length > 0) this.keepAside(text, `Not all of what this page had kept could be read: ${left.join(', ')}.`);
      const { rigs, activeRig, hand, settings } = everything;
      return { rigs, activeRig, hand, settings };
    } catch (error) {
      this.keepAside(text, `What this page had kept could not be read: ${wordsOf(error)}.`);
      return undefined;
    }
  }

  /** Writes soon; `onFailure` gets words when the browser refuses. */
  write(stored: Stored, onFailure: (words: string) => void): void {
    if (this.locked) return;
    this.writer.write(() => storedText(stored, this.unknown), (why) => onFailure(
      `Rigs and settings cannot be kept (${why}). Export them before you close the page.`));
  }

  flush(): void {
    this.writer.flush();
  }

  /** Tells what another window of this page writes. */
  follow(onOther: (stored: Stored) => void): void {
    onOtherWindow(KEY, (text) => {
      if (!text) return;
      try {
        const { everything, unknown } = parseStored(text);
        this.unknown = unknown;
        onOther(everything);
      } catch {
        // A newer page writes there: what it keeps must not be written over.
        this.locked = true;
      }
    });
  }

  private keepAside(text: string, words: string): void {
    if (setAside(this.shelf, text) !== undefined) {
      this.trouble = `${words} It was set aside, nothing was deleted: Settings has it as a file.`;
      return;
    }
    this.locked = true;
    this.trouble = `${words} It is left as it is, and this page keeps nothing new, until there is room ` +
      'in the browser\'s storage.';
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** What the page keeps, as a text. \p unknown: keys of a newer page that go on with it. */
export function storedText(stored: Stored, unknown: Record<string, unknown> = {}): string {
  return JSON.stringify({ format: FORMAT, version: VERSION_WRITTEN, ...unknown, ...stored }, null, 1);
}

/** The file of everything. */
export function everythingText(stored: Stored, drafts: Draft[], when: Date): string {
  const everything: Everything = { ...stored, drafts, written: when.toISOString() };
  return storedText(everything);
}

type Table = Record<string, unknown>;

/** One reader a version; a new version brings its own and leaves the old ones here. */
const readers: Record<number, (table: Table) => Reading> = { 1: readVersion1 };

/** The inverse of both. Throws an Error whose message is for the person. */
export function parseStored(text: string): Reading {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new Error('it is broken, or not a file of this page');
  }
  if (!isTable(value) || value['format'] !== FORMAT) throw new Error('it is not a file of this page');
  const read = readers[Number(value['version'])];
  if (!read) {
    throw new Error(`its version is ${String(value['version'])}, and this page reads version ` +
      `${Object.keys(readers).join(', ')}. A newer page can read it`);
  }
  return read(value);
}

function readVersion1(table: Table): Reading {
  const left: string[] = [];
  const { format: _format, version: _version, rigs, activeRig, hand, settings, drafts, written, ...unknown } = table;
  return {
    everything: {
      rigs: checkedRigs(rigs, left),
      activeRig: typeof activeRig === 'string' ? activeRig : '',
      hand: checked<Hand>(hand, handRules, 'in hand', left),
      settings: checked<Settings>(settings, settingsRules, 'settings', left),
      drafts: checkedDrafts(drafts, left),
      ...(typeof written === 'string' ? { written } : {}),
    },
    left,
    unknown,
  };
}

function checkedRigs(value: unknown, left: string[]): StoredRig[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    left.push('the rigs');
    return [];
  }
  const ids = new Set<string>();
  return value.flatMap((rig: unknown, i): StoredRig[] => {
    if (!isTable(rig) || typeof rig['toml'] !== 'string') {
      left.push(`rig ${i + 1}`);
      return [];
    }
    const given = rig['id'];
    const id = typeof given === 'string' && given && !ids.has(given) ? given : newId();
    ids.add(id);
    return [{ id, toml: rig['toml'] }];
  });
}

type Rules<T> = { [K in keyof T]: (value: unknown) => boolean };

const isNumber = (value: unknown): boolean => typeof value === 'number' && Number.isFinite(value);
const isDepth = (value: unknown): boolean => isNumber(value) && (value as number) >= 0;
const isFlag = (value: unknown): boolean => typeof value === 'boolean';
const isText = (value: unknown): boolean => typeof value === 'string';
const isOneOf = (...words: string[]) => (value: unknown): boolean => words.includes(value as string);
const areNumbers = (value: unknown): boolean => isTable(value) && Object.values(value).every(isDepth);

function isPoint(value: unknown): value is CurrentPoint {
  return isTable(value) && isDepth(value['depth_m']) && isNumber(value['along_mps']) &&
    isNumber(value['across_mps']);
}

const handRules: Rules<Hand> = {
  speed_mps: isDepth,
  usePhone: isFlag,
  counts_m: areNumbers,
  balls_kg: areNumbers,
  rigger: isText,
  wanted: (value) => isTable(value) && isDepth(value['depth_m']) && isOneOf('ball', 'lure')(value['of']),
  current: (value) => Array.isArray(value) && value.length > 0 && value.every(isPoint),
  bottom_m: (value) => value === null || isDepth(value),
  water: isOneOf('salt', 'fresh'),
};

const settingsRules: Rules<Settings> = {
  units: isOneOf('feet', 'knots', 'metric'),
  look: isOneOf('day', 'night'),
  keepAwake: isFlag,
};

/** Of a table what is as it should be; keys without a rule stay. */
function checked<T>(value: unknown, rules: Rules<T>, what: string, left: string[]): Partial<T> {
  if (value === undefined) return {};
  if (!isTable(value)) {
    left.push(what);
    return {};
  }
  const good: Table = {};
  for (const [key, item] of Object.entries(value)) {
    const rule = (rules as Record<string, ((item: unknown) => boolean) | undefined>)[key];
    if (!rule || rule(item)) good[key] = item;
    else left.push(`${what}: ${key}`);
  }
  return good as Partial<T>;
}

function isTable(value: unknown): value is Table {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
