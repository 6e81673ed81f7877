// What the page and its workers say to each other.

export type ToWorker =
  | { kind: 'start'; compiled: WebAssembly.Module }
  | { kind: 'ask'; id: number; requests: string[] };

export type FromWorker =
  | { kind: 'ready' }
  | { kind: 'failed'; words: string }
  /** `solve_ms`: the time all requests took together. */
  | { kind: 'answers'; id: number; answers: string[]; solve_ms: number };
