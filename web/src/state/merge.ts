// Bringing a file of everything in beside what is here. The rule: what is here stays as it is. A rig of
// the file that is here word for word is not brought in again; any other is added, under a free name if
// its own is taken. So nothing of either side is lost.
import { isProblem } from '../engine/desk';
import type { App, Rig } from './app';
import type { Draft, Drafts } from './drafts';
import { renamed } from './rig_names';
import { freeName, nameInText, newId, type StoredRig } from './rigs';
import type { Everything } from './storage';

export interface Coming {
  /** Its name in the file. */
  name: string;
  fate: 'new' | 'same' | 'renamed';
  /** As it will be kept; of a rig that is here already, that one. */
  rig: Rig;
  /** What it is called here. */
  as: string;
}

export interface Plan {
  coming: Coming[];
  /** Unfinished rigs to add, by the ids of this page. */
  drafts: Draft[];
  /** The rig in use of the file, by its id here. */
  activeRig: string | undefined;
}

export function rigName(rig: Rig): string {
  return rig.facts?.name ?? nameInText(rig.toml) ?? 'A rig without a name';
}

const contentOf = ({ rig: _rig, touched: _touched, ...content }: Draft): string => JSON.stringify(content);

/** What would come of it; nothing is changed yet. */
export async function planMerge(app: App, file: Everything, drafts: Draft[]): Promise<Plan> {
  const here = app.state.get().rigs;
  const plan: Plan = { coming: [], drafts: [], activeRig: undefined };
  const names = here.map(rigName);
  const ids = new Set(here.map((rig) => rig.id));
  for (const stored of file.rigs) {
    const draft = file.drafts.find((other) => other.rig === stored.id);
    const twin = here.find((rig) => rig.toml === stored.toml);
    const twinDraft = twin && drafts.find((other) => other.rig === twin.id);
    const same = twin && !(draft && twinDraft && contentOf(draft) !== contentOf(twinDraft));
    const coming = same
      ? { name: rigName(twin), as: rigName(twin), fate: 'same' as const, rig: twin }
      : await comingRig(app, { ...stored, id: ids.has(stored.id) ? newId() : stored.id }, names);
    ids.add(coming.rig.id);
    names.push(coming.as);
    plan.coming.push(coming);
    if (draft && !(same && twinDraft)) plan.drafts.push({ ...draft, rig: coming.rig.id });
    if (file.activeRig === stored.id) plan.activeRig = coming.rig.id;
  }
  return plan;
}

async function comingRig(app: App, stored: StoredRig, names: string[]): Promise<Coming> {
  const answer = await app.desk.ask({ question: 'rig_read', rig_toml: stored.toml });
  if (isProblem(answer)) {
    const rig: Rig = { ...stored, facts: null, problem: answer.problem };
    return { name: rigName(rig), as: rigName(rig), fate: 'new', rig };
  }
  const { name } = answer.facts;
  const as = freeName(name, names);
  if (as === name) return { name, as, fate: 'new', rig: { ...stored, facts: answer.facts, problem: null } };
  const { toml, facts } = await renamed(app.desk, answer, stored.toml, as);
  return { name, as, fate: 'renamed', rig: { id: stored.id, toml, facts, problem: null } };
}

/** Does it. With `takeRest` units, look and what is in hand become the file's too. Gives what undoes it. */
export function applyMerge(app: App, drafts: Drafts, plan: Plan, file: Everything, takeRest: boolean): () => void {
  const before = app.state.get();
  const tell = (words: string): void => app.say(words);
  const added = plan.coming.filter(({ fate }) => fate !== 'same').map(({ rig }) => rig);
  app.setRigs([...before.rigs, ...added]);
  drafts.set([...drafts.list.get(), ...plan.drafts], tell);
  if (takeRest) {
    app.changeSettings(file.settings);
    app.changeHand(file.hand);
    app.useRig(plan.activeRig ?? before.activeRig);
  }
  return () => {
    const isAdded = (id: string): boolean => added.some((rig) => rig.id === id);
    const isMerged = (draft: Draft): boolean => plan.drafts.some((other) => other.rig === draft.rig);
    drafts.set(drafts.list.get().filter((draft) => !isMerged(draft)), tell);
    app.setRigs(app.state.get().rigs.filter((rig) => !isAdded(rig.id)));
    if (!takeRest) return;
    app.state.change({ settings: before.settings, hand: before.hand });
    app.useRig(before.activeRig);
  };
}
