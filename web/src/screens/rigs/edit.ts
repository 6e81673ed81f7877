// A rig while it is edited: what is typed is checked by the engine a moment later, the latest wins. What
// is right is kept at once; what is not yet right is kept as a draft beside the last good rig.
import type { DocumentTable, Problem, RigAnswer } from '../../engine/answers';
import { isProblem } from '../../engine/desk';
import type { App, Rig } from '../../state/app';
import type { Draft, Drafts } from '../../state/drafts';
import { carryHand } from '../../state/rigs';
import { Store } from '../../state/store';

export interface EditState {
  mode: 'form' | 'text';
  /** What the form shows; none while it is read, and where the text cannot be. */
  document: DocumentTable | null;
  /** What the text field shows. */
  text: string;
  /** Why what is typed is no rig yet. */
  problem: Problem | null;
  status: 'reading' | 'kept' | 'checking' | 'unfinished';
  /** The draft of an earlier visit was taken up. */
  takenUp: boolean;
}

export const CHECK_MS = 250;

export class RigEdit {
  readonly state = new Store<EditState>(
    { mode: 'form', document: null, text: '', problem: null, status: 'reading', takenUp: false });
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running: Promise<void> | undefined;
  private turn = 0;
  private first: Rig | undefined;

  constructor(
    private readonly app: App,
    private readonly drafts: Drafts,
    readonly id: string,
  ) {}

  /** The kept rig: the last good one. */
  rig(): Rig | undefined {
    return this.app.state.get().rigs.find((rig) => rig.id === this.id);
  }

  async open(): Promise<void> {
    const rig = this.rig();
    if (!rig) return;
    this.first = rig;
    const draft = this.drafts.of(this.id);
    if (draft) {
      this.takeUp(draft);
      return;
    }
    this.state.change({ mode: 'form' });
    await this.showKept();
  }

  change(document: DocumentTable): void {
    this.state.change({ document, status: 'checking' });
    this.keepDraft({ kind: 'form', document });
    this.checkSoon();
  }

  changeText(text: string): void {
    this.state.change({ text, status: 'checking' });
    this.keepDraft({ kind: 'text', text });
    this.checkSoon();
  }

  /** Form or text. Only what is right can be shown the other way. */
  async show(mode: EditState['mode']): Promise<void> {
    await this.settle();
    const { status, document } = this.state.get();
    if (status !== 'kept' || (mode === 'form' && !document)) return;
    this.state.change({ mode, text: this.rig()?.toml ?? '' });
  }

  /** Leaves the unfinished, goes back to the last good rig. Gives what undoes it. */
  async drop(): Promise<() => void> {
    const draft = this.drafts.of(this.id);
    this.stopChecking();
    this.drafts.drop(this.id, this.tell);
    await this.showKept();
    return () => {
      if (draft) this.takeUp(draft);
    };
  }

  /** Whether there is something unfinished to leave. */
  get hasDraft(): boolean {
    return this.drafts.of(this.id) !== undefined;
  }

  /** Whether anything was kept that differs from the rig as it was found. */
  get changed(): boolean {
    return this.first !== undefined && this.rig()?.toml !== this.first.toml;
  }

  /** Back to the rig as it was found. Gives what undoes it. */
  async revert(): Promise<() => void> {
    const [now, draft] = [this.rig(), this.drafts.of(this.id)];
    this.stopChecking();
    this.drafts.drop(this.id, this.tell);
    if (this.first) this.keep(this.first);
    await this.showKept();
    return () => {
      if (now) this.keep(now);
      if (draft) this.takeUp(draft);
      else void this.showKept();
    };
  }

  /** Checks what was typed now, and waits for it. */
  async settle(): Promise<void> {
    if (this.timer !== undefined) {
      clearTimeout(this.timer);
      this.timer = undefined;
      this.running = this.check();
    }
    await this.running;
  }

  private readonly tell = (words: string): void => this.app.say(words);

  private takeUp(draft: Draft): void {
    this.keepDraft(draft.kind === 'form'
      ? { kind: 'form', document: draft.document } : { kind: 'text', text: draft.text });
    this.state.change(draft.kind === 'form'
      ? { mode: 'form', document: draft.document, status: 'checking', takenUp: true, problem: null }
      : { mode: 'text', text: draft.text, status: 'checking', takenUp: true, problem: null });
    this.timer ??= setTimeout(() => void this.settle(), 0);
  }

  private async showKept(): Promise<void> {
    const rig = this.rig();
    if (!rig) return;
    this.turn += 1;
    const mine = this.turn;
    const outcome = await this.app.desk.ask({ question: 'rig_read', rig_toml: rig.toml });
    if (mine !== this.turn) return;
    const shown = { text: rig.toml, takenUp: false };
    if (isProblem(outcome)) {
      this.state.change({ ...shown, mode: 'text', document: null, problem: outcome.problem, status: 'unfinished' });
    } else {
      this.state.change({ ...shown, document: outcome.document, problem: null, status: 'kept' });
    }
  }

  private checkSoon(): void {
    this.stopChecking();
    this.timer = setTimeout(() => void this.settle(), CHECK_MS);
  }

  private stopChecking(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.turn += 1;
  }

  private async check(): Promise<void> {
    this.turn += 1;
    const mine = this.turn;
    const { mode, document, text } = this.state.get();
    const outcome = await this.ask(mode, document, text);
    if (mine !== this.turn) return;
    if (isProblem(outcome)) {
      this.state.change({ problem: outcome.problem, status: 'unfinished' });
      return;
    }
    // A text stays as it was typed, remarks and all.
    const toml = mode === 'text' ? text : outcome.toml;
    this.keep({ id: this.id, toml, facts: outcome.facts, problem: null });
    this.drafts.drop(this.id, this.tell);
    this.state.change({ problem: null, status: 'kept', takenUp: false,
      ...(mode === 'text' ? { document: outcome.document } : { text: toml }) });
  }

  private async ask(mode: EditState['mode'], document: DocumentTable | null,
    text: string): Promise<RigAnswer | { question: string; problem: Problem }> {
    try {
      return await (mode === 'form' && document
        ? this.app.desk.ask({ question: 'rig_write', document })
        : this.app.desk.ask({ question: 'rig_read', rig_toml: text }));
    } catch (error) {
      return { question: '', problem: { kind: 'fault', subject: 'engine', line: 0, path: null,
        message: `It could not be checked (${error instanceof Error ? error.message : String(error)}).`,
        remedy: 'What you typed is kept. Load the page again.' } };
    }
  }

  private keepDraft(what: { kind: 'form'; document: DocumentTable } | { kind: 'text'; text: string }): void {
    if (!this.rig()) return;
    this.drafts.put({ rig: this.id, touched: new Date().toISOString(), ...what }, this.tell);
  }

  /** Puts a good rig in the place of the kept one. */
  private keep(rig: Rig): void {
    const { rigs, activeRig, hand } = this.app.state.get();
    const before = this.rig();
    if (!before || before.toml === rig.toml) return;
    if (activeRig === this.id && before.facts && rig.facts) {
      this.app.changeHand(carryHand(hand, before.facts, rig.facts));
    }
    this.app.setRigs(rigs.map((other) => (other.id === this.id ? rig : other)));
  }
}

const edits = new WeakMap<App, Map<string, RigEdit>>();

/** The one edit of a rig: a way back that was offered earlier still leads to it. */
export function editOf(app: App, drafts: Drafts, id: string): RigEdit {
  const known = edits.get(app) ?? new Map<string, RigEdit>();
  edits.set(app, known);
  const edit = known.get(id) ?? new RigEdit(app, drafts, id);
  known.set(id, edit);
  return edit;
}
