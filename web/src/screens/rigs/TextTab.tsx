// The rig as text, for what the form has no field for, and for those who prefer it.
import { useId, useRef } from 'preact/hooks';
import type { Problem } from '../../engine/answers';
import { wordsOfProblem } from './fields';

interface Props {
  text: string;
  problem: Problem | null;
  onText(text: string): void;
}

/** Start and end of a line, counted from 1. */
export function lineSpan(text: string, line: number): [start: number, end: number] {
  const lines = text.split('\n');
  const start = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  return [start, start + (lines[line - 1]?.length ?? 0)];
}

export function TextTab({ text, problem, onText }: Props) {
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const line = problem?.line ?? 0;
  const showLine = (): void => {
    const element = field.current;
    if (!element) return;
    element.focus();
    element.setSelectionRange(...lineSpan(text, line));
    const height = parseFloat(getComputedStyle(element).lineHeight);
    element.scrollTop = Math.max(0, (line - 4) * height);
  };
  return (
    <div class="field rig-text">
      <label class="name" for={id}>The rig file</label>
      <p class="hint" id={`${id}-hint`}>
        TOML: a key, an equals sign, a value; every quantity with its unit, in quotes. A # starts a remark.
        The manual page docs/rig-file.md has every key.
      </p>
      {problem && (
        <div class="row" id={`${id}-wrong`}>
          <p class="wrong grow">{line > 0 && `Line ${line}: `}{wordsOfProblem(problem)}</p>
          {line > 0 && <button type="button" class="button" onClick={showLine}>Show line {line}</button>}
        </div>
      )}
      <textarea id={id} ref={field} value={text} spellcheck={false} autocomplete="off" autocapitalize="off"
        wrap="off" aria-invalid={problem !== null} rows={24}
        aria-describedby={`${id}-hint${problem ? ` ${id}-wrong` : ''}`}
        onInput={(event) => onText(event.currentTarget.value)} />
    </div>
  );
}
