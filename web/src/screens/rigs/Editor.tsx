// A rig while it is edited: form or text, what is wrong, and the drawing of the last good one.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { DocumentTable, Problem } from '../../engine/answers';
import { useApp, type AppState, type GoodRig } from '../../state/app';
import { draftsOfBrowser } from '../../state/drafts';
import { rigName } from '../../state/merge';
import { useStore } from '../../state/store';
import { tablesAt, textAt, withItem, withoutItem, valueAt, isTable, type Path } from './document';
import { editOf, type EditState, type RigEdit } from './edit';
import { EditingContext, type Editing } from './editing';
import { TextField, wordsOfProblem } from './fields';
import { leadTo, riggerOf } from './focus';
import { withRigger } from './new_rig';
import { RigDrawing } from './RigDrawing';
import { RiggerFields } from './RiggerFields';
import { TextTab } from './TextTab';
import { WaterFields } from './WaterFields';

const whole = (state: EditState) => state;
const rigsOf = (state: AppState) => state.rigs;
const activeOf = (state: AppState) => state.activeRig;

interface Props {
  id: string;
  onClose(): void;
  onMakeMine(id: string): void;
}

export function Editor({ id, onClose, onMakeMine }: Props) {
  const app = useApp();
  const edit = useMemo(() => editOf(app, draftsOfBrowser(), id), [app, id]);
  const state = useStore(edit.state, whole);
  const rig = useStore(app.state, rigsOf).find((one) => one.id === id);
  const inUse = useStore(app.state, activeOf) === id;
  const [chosen, setChosen] = useState(0);
  const [wanted, setWanted] = useState<string | undefined>();
  const roomy = useRoomy();
  const title = useRef<HTMLHeadingElement>(null);
  const form = useRef<HTMLDivElement>(null);

  useEffect(() => {
    void edit.open();
    title.current?.focus();
    return () => void edit.settle();
  }, [edit]);
  useEffect(() => {
    if (wanted === undefined || !form.current) return;
    leadTo(form.current, wanted);
    setWanted(undefined);
  }, [wanted]);

  if (!rig) return null;
  const count = state.document ? tablesAt(state.document, ['riggers']).length : 0;
  const rigger = Math.min(chosen, Math.max(0, count - 1));
  const drawn = rig.facts?.riggers[rigger] ?? rig.facts?.riggers[0];
  const showFault = (problem: Problem): void => {
    setChosen(riggerOf(problem.path) ?? rigger);
    setWanted(problem.path ?? '');
  };
  const undoable = async (act: Promise<() => void>, words: string): Promise<void> => app.say(words, await act);
  return (
    <section class="screen rig-editor" aria-labelledby="rig-title">
      <header class="rig-head">
        <button type="button" class="button plain" onClick={onClose}>All rigs</button>
        <h1 id="rig-title" ref={title} tabIndex={-1}>{rigName(rig)}</h1>
      </header>
      <Standing state={state} inUse={inUse} onShow={showFault}
        onDrop={edit.hasDraft ? () => void undoable(edit.drop(), 'Back at the last good rig.') : undefined}
        onRevert={edit.changed ? () => void undoable(edit.revert(), 'Back as it was when you opened it.') : undefined} />
      <div class="rig-board">
        <div class="rig-sheet" ref={form}>
          {rig.facts?.invented && (
            <div class="rig-invented">
              <p>This is a made-up example: boat, rig and waters. Measure yours.</p>
              <button type="button" class="button" onClick={() => onMakeMine(id)}>Make it mine</button>
            </div>
          )}
          <div class="row rig-tabs" role="group" aria-label="How to edit">
            {(['form', 'text'] as const).map((mode) => (
              <button type="button" key={mode} class={state.mode === mode ? 'button chosen' : 'button'}
                aria-pressed={state.mode === mode} disabled={!canShow(mode, state)}
                onClick={() => void edit.show(mode)}>{mode === 'form' ? 'Form' : 'As text'}</button>
            ))}
            {state.status === 'unfinished' && state.document && (
              <p class="soft grow">Get it right here first, or leave it.</p>
            )}
          </div>
          {state.status === 'reading' && <p>One moment …</p>}
          {state.mode === 'text' && state.status !== 'reading' && (
            <TextTab text={state.text} problem={state.problem} onText={(text) => edit.changeText(text)} />
          )}
          {state.mode === 'form' && state.document && (
            <Form edit={edit} document={state.document} problem={state.problem} rigger={rigger} onRigger={setChosen}
              remarks={hasRemarks(rig.toml)} />
          )}
        </div>
        {drawn && roomy && (
          <aside class="rig-side" aria-label="The last good rig">
            <RigDrawing rig={rig as GoodRig} rigger={drawn} />
          </aside>
        )}
      </div>
    </section>
  );
}

/** Whether there is room for the drawing: not on a phone held upright. */
function useRoomy(): boolean {
  const query = useMemo(() => matchMedia('(min-width: 600px)'), []);
  const [roomy, setRoomy] = useState(query.matches);
  useEffect(() => {
    const look = (): void => setRoomy(query.matches);
    query.addEventListener('change', look);
    return () => query.removeEventListener('change', look);
  }, [query]);
  return roomy;
}

function canShow(mode: EditState['mode'], state: EditState): boolean {
  return state.mode === mode || state.status === 'checking' || state.status === 'kept';
}

/** Whether the person's own remarks would go with the next change in the form. */
function hasRemarks(toml: string): boolean {
  return toml.split('\n').some((line, i) => /^\s*#/.test(line) && !(i === 0 && line.startsWith('# Written by')));
}

interface StandingProps {
  state: EditState;
  inUse: boolean;
  onShow(problem: Problem): void;
  onDrop: (() => void) | undefined;
  onRevert: (() => void) | undefined;
}

/** How it stands: kept, or why not yet. It lies over what is below it, so that nothing jumps while one types. */
function Standing({ state, inUse, onShow, onDrop, onRevert }: StandingProps) {
  const { problem, status } = state;
  const wrong = status !== 'kept' && problem !== null;
  const said = useRef('');
  // Read aloud when it goes wrong and when it is right again, not at every letter.
  if (wrong) said.current = `Not right yet. ${wordsOfProblem(problem)}`;
  else if (said.current && status === 'kept') said.current = 'Right again, and kept.';
  return (
    <div class="rig-standing">
      <div class="visually-hidden" role="status">{said.current}</div>
      <div class={wrong ? 'rig-stands unfinished' : 'rig-stands'}>
        <div class="grow">
          {wrong && <Why problem={problem} isText={state.mode === 'text'} />}
          {wrong && <p class="soft">The last good rig counts.{state.takenUp && ' You left it so; it was kept.'}</p>}
          {status === 'kept' && <p>Right, and kept.{inUse ? ' In use: a change counts at once.' : ' Not in use.'}</p>}
          {status === 'checking' && !wrong && <p class="soft">Checking …</p>}
        </div>
        {wrong && state.mode === 'form' && problem.path && (
          <button type="button" class="button" onClick={() => onShow(problem)}>Show it</button>
        )}
        {wrong && onDrop && <button type="button" class="button plain" onClick={onDrop}>Leave it</button>}
        {!wrong && onRevert && <button type="button" class="button plain" onClick={onRevert}>Undo all</button>}
      </div>
    </div>
  );
}

/** On a phone the words stand by the field alone, where there is one. */
function Why({ problem, isText }: { problem: Problem; isText: boolean }) {
  const hasPlace = isText ? problem.line > 0 : problem.path !== null;
  const place = isText ? `line ${problem.line}` : problem.subject;
  return (
    <p class="wrong">
      Not right yet{hasPlace && `: ${place}`}.{' '}
      <span class={hasPlace ? 'rig-why' : ''}>{wordsOfProblem(problem)}</span>
    </p>
  );
}

interface FormProps {
  edit: RigEdit;
  document: DocumentTable;
  problem: Problem | null;
  rigger: number;
  onRigger(index: number): void;
  remarks: boolean;
}

const MOST_RIGGERS = 6;

function Form({ edit, document, problem, rigger, onRigger, remarks }: FormProps) {
  const app = useApp();
  const stash = useRef(new Map<string, DocumentTable>());
  const editing: Editing = {
    document, problem, stash: stash.current, change: (next) => edit.change(next),
  };
  const riggers = tablesAt(document, ['riggers']);
  const tellRemoved = (words: string, list: Path, index: number): void => {
    const item = valueAt(document, [...list, index]);
    app.say(words, () => {
      const now = edit.state.get().document;
      if (now && isTable(item)) edit.change(withItem(now, list, index, item));
    });
  };
  const removeRigger = (): void => {
    tellRemoved(`${textAt(document, ['riggers', rigger, 'name']) || 'The rigger'} removed.`, ['riggers'], rigger);
    edit.change(withoutItem(document, ['riggers'], rigger));
    onRigger(Math.max(0, rigger - 1));
  };
  const wrongRigger = riggerOf(problem?.path);
  return (
    <EditingContext.Provider value={editing}>
      {remarks && (
        <p class="soft">Its text has remarks (#): a change in the form drops them, a change in the text keeps them.</p>
      )}
      <TextField path={['name']} label="Name of the rig" placeholder="My boat" />
      <WaterFields />
      <div class="rig-riggers" role="group" aria-label="Rigger">
        {riggers.map((one, i) => (
          <button type="button" key={i} class={i === rigger ? 'button chosen' : 'button'} aria-pressed={i === rigger}
            onClick={() => onRigger(i)}>
            {textAt(one, ['name']) || `rigger ${i + 1}`}{wrongRigger === i && i !== rigger && ': look here'}</button>
        ))}
        <button type="button" class="button" disabled={riggers.length >= MOST_RIGGERS}
          onClick={() => { edit.change(withRigger(document)); onRigger(riggers.length); }}>Add a rigger</button>
      </div>
      <RiggerFields key={rigger} path={['riggers', rigger]} onRemoved={tellRemoved} />
      {riggers.length > 1 && (
        <button type="button" class="button plain" onClick={removeRigger}>Remove this rigger</button>
      )}
    </EditingContext.Provider>
  );
}
