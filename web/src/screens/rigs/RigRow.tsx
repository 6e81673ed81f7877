// One kept rig in the list.
import { canShareFiles } from '../../parts/files';
import { useApp, type GoodRig, type Rig } from '../../state/app';
import type { Draft, Drafts } from '../../state/drafts';
import { rigName } from '../../state/merge';
import { deleteRig, duplicate, exportRig, shareRig } from './acts';
import { wordsOfProblem } from './fields';
import { riggerWords } from './words';

interface Props {
  rig: Rig;
  inUse: boolean;
  draft: Draft | undefined;
  drafts: Drafts;
  onEdit(id: string): void;
  onMakeMine(id: string): void;
  /** Does something that may fail, and tells if it does. */
  attempt(act: Promise<unknown>): void;
}

export function RigRow({ rig, inUse, draft, drafts, onEdit, onMakeMine, attempt }: Props) {
  const app = useApp();
  const name = rigName(rig);
  return (
    <li class={inUse ? 'rig-row in-use' : 'rig-row'}>
      <h2 tabIndex={-1} data-rig={rig.id}>{name}{inUse && <span class="rig-mark-use"> in use</span>}</h2>
      {rig.facts && (
        <ul class="rig-words">
          {rig.facts.riggers.map((rigger) => (
            <li key={rigger.name}><strong>{rigger.name}:</strong> {riggerWords(rigger)}</li>
          ))}
        </ul>
      )}
      {rig.problem && (
        <p class="wrong">It cannot be used.{rig.problem.line > 0 && ` Line ${rig.problem.line}:`} {wordsOfProblem(rig.problem)}</p>
      )}
      {rig.facts?.invented && <p class="soft">A made-up example: boat, rig and waters.</p>}
      {draft && <p class="wrong">You left a change unfinished. The last good rig counts.</p>}
      <div class="row rig-acts">
        {rig.facts && !inUse && (
          <button type="button" class="button first" aria-label={`Use this: ${name}`}
            onClick={() => app.useRig(rig.id)}>Use this</button>
        )}
        <button type="button" class="button" aria-label={`${draft ? 'Go on with' : 'Edit'} ${name}`}
          onClick={() => onEdit(rig.id)}>{draft ? 'Go on' : 'Edit'}</button>
        {rig.facts?.invented && (
          <button type="button" class="button" aria-label={`Make it mine: ${name}`}
            onClick={() => onMakeMine(rig.id)}>Make it mine</button>
        )}
      </div>
      <div class="row rig-acts rarely">
        {rig.facts && (
          <button type="button" class="button plain" aria-label={`Duplicate ${name}`}
            onClick={() => attempt(duplicate(app, rig as GoodRig))}>Duplicate</button>
        )}
        <button type="button" class="button plain" aria-label={`Export ${name}`}
          onClick={() => exportRig(rig)}>Export</button>
        {canShareFiles() && (
          <button type="button" class="button plain" aria-label={`Share ${name}`}
            onClick={() => attempt(shareRig(app, rig))}>Share</button>
        )}
        <button type="button" class="button plain" aria-label={`Delete ${name}`}
          onClick={() => deleteRig(app, drafts, rig)}>Delete</button>
      </div>
    </li>
  );
}
