// A value that parts of the page watch.
import { useEffect, useState } from 'preact/hooks';

export class Store<T> {
  private readonly watchers = new Set<() => void>();

  constructor(private value: T) {}

  get(): T {
    return this.value;
  }

  set(value: T): void {
    if (Object.is(value, this.value)) return;
    this.value = value;
    for (const watcher of [...this.watchers]) watcher();
  }

  change(patch: Partial<T>): void {
    this.set({ ...this.value, ...patch });
  }

  /** Called after every change; gives back what ends it. */
  watch(watcher: () => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }
}

/** Draws its component again when what is picked changes. `pick` gives a value of the store itself. */
export function useStore<T, P>(store: Store<T>, pick: (value: T) => P): P {
  const [picked, setPicked] = useState(() => pick(store.get()));
  useEffect(() => {
    const look = (): void => setPicked(() => pick(store.get()));
    look();
    return store.watch(look);
  }, [store]);
  return picked;
}
