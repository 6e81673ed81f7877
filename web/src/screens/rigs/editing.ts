// What the fields of the form have in common: the document, what is wrong with it, and how it changes.
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { DocumentTable, DocumentValue, Problem } from '../../engine/answers';
import { put, type Path } from './document';

export interface Editing {
  document: DocumentTable;
  problem: Problem | null;
  change(document: DocumentTable): void;
  /** What a choice put out of sight, by key: it comes back with the choice. */
  stash: Map<string, DocumentTable>;
}

export const EditingContext = createContext<Editing | null>(null);

export function useEditing(): Editing & { set(path: Path, value: DocumentValue | undefined): void } {
  const editing = useContext(EditingContext);
  if (!editing) throw new Error('useEditing outside of the form');
  return { ...editing, set: (path, value) => editing.change(put(editing.document, path, value)) };
}
