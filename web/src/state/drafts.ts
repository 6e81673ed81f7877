// Rigs that are being edited and are not right yet. They are kept beside the rigs, so that nothing
// typed is lost; the rig itself stays as it was when it was last right.
import type { DocumentTable } from '../engine/answers';
import { LateWriter, onOtherWindow, setAside, shelfOfBrowser, type Shelf } from './shelf';
import { Store } from './store';

interface OfRig {
  /** The rig's id. */
  rig: string;
  /** When it was last touched, ISO 8601. */
  touched: string;
}
export type Draft = OfRig &
  ({ kind: 'form'; document: DocumentTable } | { kind: 'text'; text: string });

const KEY = 'offplumb-drafts';
const FORMAT = 'offplumb-drafts';
const VERSION_WRITTEN = 1;

export class Drafts {
  readonly list: Store<Draft[]>;
  /** What could not be read at the start, in words. */
  trouble: string | undefined;
  private readonly writer: LateWriter;
  private locked = false;

  constructor(private readonly shelf: Shelf | undefined) {
    this.writer = new LateWriter(shelf, KEY);
    this.list = new Store(this.read());
    onOtherWindow(KEY, (text) => this.adopt(text));
  }

  of(rig: string): Draft | undefined {
    return this.list.get().find((draft) => draft.rig === rig);
  }

  put(draft: Draft, onFailure: (words: string) => void): void {
    this.set([...this.list.get().filter((other) => other.rig !== draft.rig), draft], onFailure);
  }

  drop(rig: string, onFailure: (words: string) => void): void {
    if (this.of(rig)) this.set(this.list.get().filter((draft) => draft.rig !== rig), onFailure);
  }

  set(drafts: Draft[], onFailure: (words: string) => void): void {
    this.list.set(drafts);
    if (this.locked) return;
    this.writer.write(() => (drafts.length > 0 ? draftsText(drafts) : undefined), (why) => onFailure(
      `What you are typing cannot be kept (${why}). Get the rig right, or copy its text, before you ` +
      'close the page.'));
  }

  flush(): void {
    this.writer.flush();
  }

  /** What another window has unfinished; what is typed here and not written yet goes first. */
  private adopt(text: string | null): void {
    const left: string[] = [];
    const drafts = text ? parseDrafts(text, left) : [];
    if (left.length === 0 && !this.writer.isLate) this.list.set(drafts);
  }

  private read(): Draft[] {
    const text = this.shelf?.getItem(KEY);
    if (!text) return [];
    const left: string[] = [];
    const drafts = parseDrafts(text, left);
    if (left.length > 0) {
      this.locked = setAside(this.shelf, text) === undefined;
      this.trouble = `Not all unfinished rigs could be read: ${left.join(', ')}. Their text was kept.`;
    }
    return drafts;
  }
}

function draftsText(drafts: Draft[]): string {
  return JSON.stringify({ format: FORMAT, version: VERSION_WRITTEN, drafts });
}

function parseDrafts(text: string, left: string[]): Draft[] {
  try {
    const value = JSON.parse(text) as { format?: unknown; version?: unknown; drafts?: unknown } | null;
    if (value?.format === FORMAT && value.version === VERSION_WRITTEN) {
      return checkedDrafts(value.drafts, left);
    }
  } catch {
    // Said below.
  }
  left.push('all of them');
  return [];
}

/** Of a list what are drafts; `left` gets the others, in words. */
export function checkedDrafts(value: unknown, left: string[]): Draft[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    left.push('the unfinished rigs');
    return [];
  }
  return value.filter((draft: unknown, i): draft is Draft => {
    const good = isDraft(draft);
    if (!good) left.push(`unfinished rig ${i + 1}`);
    return good;
  });
}

function isDraft(value: unknown): value is Draft {
  if (typeof value !== 'object' || value === null) return false;
  const { rig, touched, kind, document, text } = value as Record<string, unknown>;
  if (typeof rig !== 'string' || typeof touched !== 'string') return false;
  return kind === 'text' ? typeof text === 'string'
    : kind === 'form' && typeof document === 'object' && document !== null && !Array.isArray(document);
}

let ofBrowser: Drafts | undefined;

/** The browser's own: one for the whole page. */
export function draftsOfBrowser(): Drafts {
  ofBrowser ??= new Drafts(shelfOfBrowser());
  return ofBrowser;
}
