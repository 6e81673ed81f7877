// The browser's own storage, as this page uses it: texts under keys. Every access may fail, and what
// cannot be read is set aside, never thrown away.

/** As localStorage; undefined where the browser gives none. */
export type Shelf = Pick<globalThis.Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const ASIDE = 'offplumb-set-aside-';

export interface SetAside {
  key: string;
  text: string;
}

export function shelfOfBrowser(): Shelf | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined;
  }
}

/** Keeps a text that could not be read under a key of its own. Gives the key; none if it failed. */
export function setAside(shelf: Shelf | undefined, text: string): string | undefined {
  if (!shelf) return undefined;
  const same = listSetAside(shelf).find((other) => other.text === text);
  if (same) return same.key;
  const now = new Date().toISOString();
  let key = ASIDE + now;
  for (let i = 2; shelf.getItem(key) !== null; i += 1) key = `${ASIDE}${now}-${i}`;
  try {
    shelf.setItem(key, text);
    return key;
  } catch {
    return undefined;
  }
}

/** Everything that was set aside, oldest first. */
export function listSetAside(shelf: Shelf | undefined): SetAside[] {
  const found: SetAside[] = [];
  for (let i = 0; shelf && i < shelf.length; i += 1) {
    const key = shelf.key(i);
    if (!key?.startsWith(ASIDE)) continue;
    const text = shelf.getItem(key);
    if (text !== null) found.push({ key, text });
  }
  return found.sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** Tells what another window of this page wrote under a key; null: it took it away. */
export function onOtherWindow(key: string, tell: (text: string | null) => void): void {
  globalThis.addEventListener?.('storage', (event) => {
    const { key: changed, newValue } = event as StorageEvent;
    if (changed === key) tell(newValue);
  });
}

const DELAY_MS = 300;

/** Writes the latest text to one key, soon; at once when the page goes out of sight. */
export class LateWriter {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private pending: (() => void) | undefined;
  private failed = false;

  constructor(
    private readonly shelf: Shelf | undefined,
    private readonly key: string,
  ) {
    globalThis.addEventListener?.('pagehide', () => this.flush());
    globalThis.document?.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') this.flush();
    });
  }

  /**
   * `text` is asked when it is written; with nothing to keep the key goes. `onFailure` gets what the
   * browser says when it refuses, once until it works again.
   */
  write(text: () => string | undefined, onFailure: (words: string) => void): void {
    this.pending = () => {
      try {
        this.put(text());
        this.failed = false;
      } catch (error) {
        if (!this.failed) onFailure(error instanceof Error ? error.message : String(error));
        this.failed = true;
      }
    };
    this.timer ??= setTimeout(() => this.flush(), DELAY_MS);
  }

  /** Whether something is not written yet. */
  get isLate(): boolean {
    return this.pending !== undefined;
  }

  flush(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    const write = this.pending;
    this.pending = undefined;
    write?.();
  }

  private put(text: string | undefined): void {
    if (!this.shelf) throw new Error('this browser keeps nothing here');
    if (text === undefined) this.shelf.removeItem(this.key);
    else this.shelf.setItem(this.key, text);
  }
}
