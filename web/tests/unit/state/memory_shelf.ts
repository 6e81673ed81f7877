// A browser's storage for tests: it can be full.
import type { Shelf } from '../../../src/state/shelf';

export class MemoryShelf implements Shelf {
  readonly texts = new Map<string, string>();
  full = false;

  constructor(texts: Record<string, string> = {}) {
    for (const [key, text] of Object.entries(texts)) this.texts.set(key, text);
  }

  get length(): number {
    return this.texts.size;
  }

  getItem(key: string): string | null {
    return this.texts.get(key) ?? null;
  }

  setItem(key: string, text: string): void {
    if (this.full) throw new Error('the quota is used up');
    this.texts.set(key, text);
  }

  removeItem(key: string): void {
    this.texts.delete(key);
  }

  key(index: number): string | null {
    return [...this.texts.keys()][index] ?? null;
  }
}
