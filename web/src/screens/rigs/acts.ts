// What can be done with a kept rig, each with its way back.
import type { RigAnswer } from '../../engine/answers';
import { isProblem } from '../../engine/desk';
import { download, fileNameFor, share } from '../../parts/files';
import type { App, GoodRig, Rig } from '../../state/app';
import type { Drafts } from '../../state/drafts';
import { rigName } from '../../state/merge';
import { renamed, written } from '../../state/rig_names';
import { freeName, newId, putBack } from '../../state/rigs';
import type { Hand } from '../../state/sea';
import { without } from './document';
import { plainRig } from './new_rig';

export const TOML = 'application/toml';

function takenNames(app: App): string[] {
  return app.state.get().rigs.map(rigName);
}

function rigOf(answer: RigAnswer, id = newId()): Rig {
  return { id, toml: answer.toml, facts: answer.facts, problem: null };
}

/** Adds a rig behind another, or at the end. */
function add(app: App, rig: Rig, behind?: string): void {
  const { rigs } = app.state.get();
  const at = rigs.findIndex((other) => other.id === behind);
  app.setRigs(putBack(rigs, rig, at < 0 ? rigs.length : at + 1));
}

function remove(app: App, id: string): void {
  app.setRigs(app.state.get().rigs.filter((rig) => rig.id !== id));
}

async function read(app: App, toml: string): Promise<RigAnswer> {
  const outcome = await app.desk.ask({ question: 'rig_read', rig_toml: toml });
  if (isProblem(outcome)) throw new Error(`${outcome.problem.message} ${outcome.problem.remedy}`.trim());
  return outcome;
}

/** A generic rig of the catalogue. Gives its id. */
export async function newRig(app: App): Promise<string> {
  const name = freeName('My boat', takenNames(app));
  const rig = rigOf(await written(app.desk, plainRig(app.about.catalogue, app.shower.units, name)));
  add(app, rig);
  return rig.id;
}

/** Takes a rig in hand again, with counts and balls as they were when it was. */
function takeBack(app: App, id: string, before: Hand): void {
  const { counts_m, balls_kg } = app.state.get().hand;
  app.changeHand({ counts_m: { ...counts_m, ...before.counts_m }, balls_kg: { ...balls_kg, ...before.balls_kg },
    rigger: before.rigger });
  app.useRig(id);
}

/** The same rig under another name. */
export async function duplicate(app: App, rig: GoodRig): Promise<void> {
  const name = freeName(rig.facts.name, takenNames(app));
  const copy = rigOf(await renamed(app.desk, await read(app, rig.toml), rig.toml, name));
  add(app, copy, rig.id);
  app.say(`Copied as "${name}".`, () => remove(app, copy.id));
}

/** A copy that is no example any more, and taken into use. Gives its id. */
export async function makeMine(app: App, rig: GoodRig): Promise<string> {
  const { activeRig: before, hand } = app.state.get();
  const { document } = await read(app, rig.toml);
  const name = freeName('My boat', takenNames(app));
  const mine = rigOf(await written(app.desk, { ...without(document, ['invented']), name }));
  add(app, mine, rig.id);
  app.useRig(mine.id);
  app.say(`"${name}" is yours, and in use. The example stays.`, () => {
    remove(app, mine.id);
    takeBack(app, before, hand);
  });
  return mine.id;
}

/** Takes a rig away, with what was unfinished of it. */
export function deleteRig(app: App, drafts: Drafts, rig: Rig): void {
  const { rigs, activeRig, hand } = app.state.get();
  const tell = (words: string): void => app.say(words);
  if (rig.facts && !rigs.some((other) => other.facts && other.id !== rig.id)) {
    app.say('This is the only rig that can be used. Make or import another one first.');
    return;
  }
  const index = rigs.indexOf(rig);
  const draft = drafts.of(rig.id);
  remove(app, rig.id);
  drafts.drop(rig.id, tell);
  app.say(`"${rigName(rig)}" deleted.`, () => {
    app.setRigs(putBack(app.state.get().rigs, rig, index));
    if (draft) drafts.put(draft, tell);
    if (activeRig === rig.id) takeBack(app, rig.id, hand);
  });
}

export function exportRig(rig: Rig): void {
  download(fileNameFor(rigName(rig), '.toml'), rig.toml, TOML);
}

/** Hands the file to another app; saves it where the browser will not. */
export async function shareRig(app: App, rig: Rig): Promise<void> {
  const name = fileNameFor(rigName(rig), '.toml');
  if ((await share(name, rig.toml)) !== 'refused') return;
  exportRig(rig);
  app.say(`This browser does not hand files on: "${name}" was saved instead.`);
}
