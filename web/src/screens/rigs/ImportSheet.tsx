// Rigs brought in from files or from a text.
import { useId, useRef, useState } from 'preact/hooks';
import { textOfFile, type FileText } from '../../parts/files';
import { useApp, type AppState } from '../../state/app';
import { useStore } from '../../state/store';
import { importAll, replaceOld, type Imported } from './imports';
import { lineSpan } from './TextTab';

const rigsOf = (state: AppState) => state.rigs;

export function ImportSheet({ attempt }: { attempt(act: Promise<unknown>): void }) {
  const app = useApp();
  const id = useId();
  const rigs = useStore(app.state, rigsOf);
  const [results, setResults] = useState<Imported[]>([]);
  const [pasted, setPasted] = useState('');
  const paste = useRef<HTMLTextAreaElement>(null);

  const bringIn = async (files: FileText[]): Promise<Imported[]> => {
    const found = await importAll(app, files);
    setResults(found);
    return found;
  };
  const choose = async (input: HTMLInputElement): Promise<void> => {
    const files = await Promise.all([...(input.files ?? [])].map((file) => textOfFile(file)));
    // The same file may be chosen again.
    input.value = '';
    if (files.length > 0) await bringIn(files);
  };
  const takePasted = async (): Promise<void> => {
    const [result] = await bringIn([{ name: 'The text you pasted', text: pasted }]);
    if (result?.fate !== 'refused') setPasted('');
    else if (result.line > 0) {
      paste.current?.focus();
      paste.current?.setSelectionRange(...lineSpan(pasted, result.line));
    }
  };
  const replace = async (imported: Imported & { fate: 'kept' }): Promise<void> => {
    const now = await replaceOld(app, imported);
    setResults((all) => all.map((one) => (one === imported ? now : one)));
  };
  // What was undone or deleted since is not told any more.
  const told = results.filter((one) => one.fate === 'refused' || rigs.some((rig) => rig.id === one.id));
  return (
    <section class="rig-import" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Bring in</h2>
      <label class="button rig-file">
        Choose rig files
        <input type="file" multiple class="visually-hidden" data-import="files"
          onChange={(event) => attempt(choose(event.currentTarget))} />
      </label>
      <details class="rig-fold">
        <summary><span>Paste a rig's text</span></summary>
        <div class="field">
          <label class="name" for={`${id}-paste`}>The text of one rig file</label>
          <textarea id={`${id}-paste`} ref={paste} value={pasted} spellcheck={false} autocomplete="off" autocapitalize="off"
            onInput={(event) => setPasted(event.currentTarget.value)} />
          <button type="button" class="button" disabled={pasted.trim() === ''}
            onClick={() => attempt(takePasted())}>Bring it in</button>
        </div>
      </details>
      <div aria-live="polite">
        {told.length > 0 && (
          <ul class="rig-results">
            {told.map((one, i) => (
              <li key={i}>
                <Result one={one} />
                {one.fate === 'kept' && one.instead && rigs.some((rig) => rig.id === one.instead?.id) && (
                  <button type="button" class="button" onClick={() => attempt(replace(one))}>
                    Put it in the place of "{one.instead.name}"</button>
                )}
              </li>
            ))}
          </ul>
        )}
      </div>
    </section>
  );
}

function Result({ one }: { one: Imported }) {
  if (one.fate === 'refused') {
    return (
      <p><strong>{one.file}</strong>: <span class="wrong">not taken. {one.line > 0 && `Line ${one.line}: `}{one.words}</span></p>
    );
  }
  if (one.fate === 'same') return <p><strong>{one.file}</strong>: here already, word for word, as "{one.name}".</p>;
  return (
    <p>
      <strong>{one.file}</strong>: kept as "{one.name}"
      {one.instead && `, since "${one.instead.name}" is here already`}.
    </p>
  );
}
