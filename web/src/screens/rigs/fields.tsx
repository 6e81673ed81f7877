// The fields of the form. Each knows its key in the rig's document and shows what the engine says of it.
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { DocumentValue, Problem } from '../../engine/answers';
import { has, isWithin, pathText, textAt, type Path } from './document';
import { useEditing } from './editing';
import { isBare, numberMeant, quantityMeant, unitIn } from './meaning';

interface Named {
  path: Path;
  label: string;
  hint?: ComponentChildren;
}

interface TextProps extends Named {
  /** A quantity: taken for a bare number until the field has a unit of its own. */
  unit?: string;
  /** A bare coefficient. */
  number?: boolean;
  placeholder?: string | undefined;
  /** To pick from, or to type something else. */
  options?: string[];
  beside?: ComponentChildren;
  /** Where the field does not simply stand for its key. */
  shown?: string;
  onValue?(value: DocumentValue | undefined): void;
}

export function wordsOfProblem(problem: Problem): string {
  return `${problem.message} ${problem.remedy}`.trim();
}

function useProblemAt(path: Path): string | undefined {
  const { problem } = useEditing();
  return problem?.path === pathText(path) ? wordsOfProblem(problem) : undefined;
}

/** One line of text: a quantity with its unit, a number, or a name. */
export function TextField(props: TextProps) {
  const { path, label, hint, options, beside, placeholder } = props;
  const { document, set } = useEditing();
  const id = useId();
  const wrong = useProblemAt(path);
  const stored = props.shown ?? textAt(document, path);
  const [typed, setTyped] = useState<string | null>(null);
  const unit = useRef(props.unit ?? '');
  const meant = (text: string): DocumentValue =>
    props.number ? numberMeant(text) : props.unit ? quantityMeant(text, unit.current) : text;
  // What is being typed stays as it is typed, while it still means what is stored.
  const shown = typed !== null && String(meant(typed)) === stored ? typed : stored;
  const take = (text: string): void => {
    setTyped(text);
    const value = text === '' ? undefined : meant(text);
    if (props.onValue) props.onValue(value);
    else set(path, value);
  };
  const addsUnit = Boolean(props.unit) && isBare(shown);
  return (
    <div class="field rig-field">
      <label class="name" for={id}>{label}</label>
      {hint && <p class="hint" id={`${id}-hint`}>{hint}</p>}
      <div class="rig-input">
        <input id={id} data-path={pathText(path)} value={shown} placeholder={placeholder}
          autocomplete="off" autocapitalize="off" spellcheck={false}
          aria-invalid={wrong !== undefined} {...(options ? { list: `${id}-list` } : {})}
          aria-describedby={`${hint ? `${id}-hint ` : ''}${addsUnit ? `${id}-unit ` : ''}${id}-wrong`}
          onFocus={() => { unit.current = unitIn(stored) ?? props.unit ?? ''; }}
          onInput={(event) => take(event.currentTarget.value)} onBlur={() => setTyped(null)} />
        {addsUnit && <span class="rig-unit" id={`${id}-unit`}>{unit.current}</span>}
        {beside}
      </div>
      {options && <datalist id={`${id}-list`}>{options.map((option) => <option key={option} value={option} />)}</datalist>}
      <p class="wrong" id={`${id}-wrong`}>{wrong}</p>
    </div>
  );
}

interface ChoiceProps extends Named {
  value: string;
  choices: { value: string; name: string }[];
  onChoose(value: string): void;
}

/** One of several things. */
export function ChoiceField({ path, label, hint, value, choices, onChoose }: ChoiceProps) {
  const id = useId();
  const wrong = useProblemAt(path);
  return (
    <div class="field rig-field">
      <label class="name" for={id}>{label}</label>
      {hint && <p class="hint" id={`${id}-hint`}>{hint}</p>}
      <select id={id} data-path={pathText(path)} value={value} aria-invalid={wrong !== undefined}
        aria-describedby={`${hint ? `${id}-hint ` : ''}${id}-wrong`}
        onChange={(event) => onChoose(event.currentTarget.value)}>
        {choices.map((choice) => <option key={choice.value} value={choice.value}>{choice.name}</option>)}
      </select>
      <p class="wrong" id={`${id}-wrong`}>{wrong}</p>
    </div>
  );
}

/** Yes or no. */
export function FlagField({ path, label, hint }: Named) {
  const { document, set } = useEditing();
  const id = useId();
  const wrong = useProblemAt(path);
  return (
    <div class="rig-field">
      <label class="rig-flag">
        <input type="checkbox" data-path={pathText(path)} checked={textAt(document, path) === 'true'}
          aria-describedby={`${id}-wrong`}
          onChange={(event) => set(path, event.currentTarget.checked ? true : undefined)} />
        <span>{label}{hint && <span class="hint soft"> {hint}</span>}</span>
      </label>
      <p class="wrong" id={`${id}-wrong`}>{wrong}</p>
    </div>
  );
}

interface FoldProps {
  title: string;
  path: Path;
  /** The keys within: it opens where one of them is wrong, and says how many are set. */
  keys: readonly string[];
  children: ComponentChildren;
}

/** Rarely needed fields, folded away. */
export function Fold({ title, path, keys, children }: FoldProps) {
  const { document, problem } = useEditing();
  const [open, setOpen] = useState(false);
  const wrongWithin = keys.some((key) => isWithin(problem?.path, [...path, key]));
  useEffect(() => { if (wrongWithin) setOpen(true); }, [wrongWithin]);
  const count = keys.filter((key) => has(document, [...path, key])).length;
  return (
    <details class="rig-fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary><span>{title}</span>{count > 0 && <span class="soft"> ({count} set)</span>}</summary>
      <div>{children}</div>
    </details>
  );
}

/** What is wrong with a part as a whole, not with one of its fields. */
export function PartTrouble({ path }: { path: Path }) {
  const wrong = useProblemAt(path);
  return wrong ? <p class="wrong" data-path={pathText(path)} tabIndex={-1}>{wrong}</p> : null;
}
