// Rig files brought in: each is read by the engine; a wrong one is refused and changes nothing.
import type { Problem } from '../../engine/answers';
import { isProblem } from '../../engine/desk';
import type { FileText } from '../../parts/files';
import type { App, Rig } from '../../state/app';
import { rigName } from '../../state/merge';
import { putName, renamed } from '../../state/rig_names';
import { freeName, newId, sameName } from '../../state/rigs';

export type Imported = { file: string } & (
  | { fate: 'refused'; words: string; line: number }
  /** The same rig is here, word for word. */
  | { fate: 'same'; id: string; name: string }
  /** `instead`: the rig that has its name, which it may replace. */
  | { fate: 'kept'; id: string; name: string; instead: { id: string; name: string } | undefined }
);

function stem(fileName: string): string {
  return fileName.replace(/\.[^.]*$/, '').trim() || 'Imported rig';
}

function refused(file: string, problem: Problem): Imported {
  return { file, fate: 'refused', words: `${problem.message} ${problem.remedy}`.trim(), line: problem.line };
}

/** A file of everything is no rig file, but it is welcome elsewhere. */
function isExport(text: string): boolean {
  return /^\s*\{/.test(text) && text.includes('"offplumb-page"');
}

/** Reads one file and keeps it. */
async function importOne(app: App, { name: file, ...rest }: FileText): Promise<Imported> {
  if ('trouble' in rest) return { file, fate: 'refused', words: rest.trouble, line: 0 };
  if (isExport(rest.text)) {
    return { file, fate: 'refused', line: 0, words: 'This is a file of everything. Bring it in under Settings.' };
  }
  const first = await app.desk.ask({ question: 'rig_read', rig_toml: rest.text });
  if (isProblem(first)) return refused(file, first.problem);
  // A rig without a name is called by its file.
  const toml = 'name' in first.document ? rest.text : putName(rest.text, stem(file));
  const answer = toml === rest.text ? first : await app.desk.ask({ question: 'rig_read', rig_toml: toml });
  if (isProblem(answer)) return refused(file, answer.problem);
  const { rigs } = app.state.get();
  const same = rigs.find((rig) => rig.toml === toml);
  if (same) return { file, fate: 'same', id: same.id, name: rigName(same) };
  const wanted = answer.facts.name;
  const instead = rigs.find((rig) => sameName(rigName(rig), wanted));
  const name = freeName(wanted, rigs.map(rigName));
  const kept = name === wanted ? { ...answer, toml } : await renamed(app.desk, answer, toml, name);
  const rig: Rig = { id: newId(), toml: kept.toml, facts: kept.facts, problem: null };
  app.setRigs([...app.state.get().rigs, rig]);
  return { file, fate: 'kept', id: rig.id, name, instead: instead && { id: instead.id, name: rigName(instead) } };
}

/** One after the other, so that each sees the names of those before it. */
export async function importAll(app: App, files: FileText[]): Promise<Imported[]> {
  const results: Imported[] = [];
  for (const file of files) {
    try {
      results.push(await importOne(app, file));
    } catch (error) {
      results.push({ file: file.name, fate: 'refused', line: 0,
        words: error instanceof Error ? error.message : String(error) });
    }
  }
  const ids = results.flatMap((result) => (result.fate === 'kept' ? [result.id] : []));
  if (ids.length > 0) {
    app.say(ids.length === 1 ? 'One rig brought in.' : `${ids.length} rigs brought in.`,
      () => app.setRigs(app.state.get().rigs.filter((rig) => !ids.includes(rig.id))));
  }
  return results;
}

/** Puts the imported rig in the place of the one that has its name. */
export async function replaceOld(app: App, imported: Imported & { fate: 'kept' }): Promise<Imported> {
  const { rigs, activeRig } = app.state.get();
  const old = rigs.find((rig) => rig.id === imported.instead?.id);
  const fresh = rigs.find((rig) => rig.id === imported.id);
  if (!old || !fresh) return imported;
  const answer = await app.desk.ask({ question: 'rig_read', rig_toml: fresh.toml });
  if (isProblem(answer)) return imported;
  const { toml, facts } = await renamed(app.desk, answer, fresh.toml, rigName(old));
  const index = rigs.indexOf(old);
  const now: Rig = { id: fresh.id, toml, facts, problem: null };
  app.setRigs(app.state.get().rigs.filter((rig) => rig.id !== old.id).map((rig) => (rig.id === now.id ? now : rig)));
  if (activeRig === old.id) app.useRig(now.id);
  app.say(`"${facts.name}" replaced.`, () => {
    const others = app.state.get().rigs.map((rig) => (rig.id === now.id ? fresh : rig));
    app.setRigs([...others.slice(0, index), old, ...others.slice(index)]);
    if (activeRig === old.id) app.useRig(old.id);
  });
  return { file: imported.file, fate: 'kept', id: now.id, name: facts.name, instead: undefined };
}
