import { afterEach, describe, expect, test, vi } from 'vitest';
import { startOffline, type OfflineState } from '../../../src/phone/offline';

/** A worker of the browser's whose state a test sets. */
class Worker extends EventTarget {
  heard: unknown[] = [];

  constructor(public state: string) {
    super();
  }

  become(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }

  /** Answers as sw.js does, with what `answer` says. */
  answer: boolean | undefined;
  postMessage(words: unknown, [port]: MessagePort[]): void {
    this.heard.push(words);
    if (this.answer !== undefined) port?.postMessage(this.answer);
  }
}

class Registration extends EventTarget {
  installing: Worker | null = null;
  waiting: Worker | null = null;
  active: Worker | null = null;
}

class Keeper extends EventTarget {
  controller: object | null = null;
  asked: string[] = [];

  constructor(private readonly outcome: Registration | Error) {
    super();
  }

  register(url: URL): Promise<Registration> {
    this.asked.push(url.href);
    return this.outcome instanceof Error ? Promise.reject(this.outcome) : Promise.resolve(this.outcome);
  }
}

const reload = vi.fn();

function browserWith(keeper: Keeper | undefined, secure = true): void {
  vi.stubGlobal('isSecureContext', secure);
  vi.stubGlobal('navigator', keeper ? { serviceWorker: keeper } : {});
  vi.stubGlobal('document', { baseURI: 'https://host.invalid/some/where/' });
  vi.stubGlobal('location', { reload });
}

function turn(): Promise<void> {
  return new Promise((done) => setTimeout(done));
}

afterEach(() => {
  vi.unstubAllGlobals();
  reload.mockReset();
});

describe('where it cannot be done', () => {
  test.each([
    ['a browser without it', undefined, true],
    ['plain http', new Keeper(new Registration()), false],
  ])('%s', async (_, keeper, secure) => {
    browserWith(keeper, secure);
    const offline = startOffline();
    await turn();
    expect(offline.state).toBe('unsupported');
    expect(keeper?.asked ?? []).toEqual([]);
    expect(await offline.takeUpdate()).toBe(false);
  });

  test('a browser that throws when it is asked', () => {
    vi.stubGlobal('isSecureContext', true);
    vi.stubGlobal('navigator', { get serviceWorker() { throw new Error('not in here'); } });
    expect(startOffline().state).toBe('unsupported');
  });

  test('a browser that refuses', async () => {
    browserWith(new Keeper(new Error('the disk is full')));
    const offline = startOffline();
    await turn();
    expect(offline.state).toBe('failed');
  });
});

describe('where it can', () => {
  function started(registration: Registration) {
    const keeper = new Keeper(registration);
    browserWith(keeper);
    const offline = startOffline();
    const seen: OfflineState[] = [];
    const end = offline.subscribe((state) => seen.push(state));
    return { keeper, offline, seen, end };
  }

  test('asks for the file beside the page', async () => {
    const { keeper } = started(new Registration());
    await turn();
    expect(keeper.asked).toEqual(['https://host.invalid/some/where/sw.js']);
  });

  test('the first visit: from installing to ready', async () => {
    const registration = new Registration();
    const worker = new Worker('installing');
    registration.installing = worker;
    const { offline, seen } = started(registration);
    await turn();
    expect(offline.state).toBe('installing');
    Object.assign(registration, { installing: null, waiting: worker });
    worker.become('installed');
    Object.assign(registration, { waiting: null, active: worker });
    worker.become('activating');
    expect(offline.state).toBe('installing');
    worker.become('activated');
    expect(seen).toEqual(['ready']);
  });

  test('the first visit, and the network goes', async () => {
    const registration = new Registration();
    const worker = new Worker('installing');
    registration.installing = worker;
    const { offline } = started(registration);
    await turn();
    registration.installing = null;
    worker.become('redundant');
    expect(offline.state).toBe('failed');
  });

  async function withUpdate() {
    const registration = new Registration();
    registration.active = new Worker('activated');
    const all = started(registration);
    await turn();
    expect(all.offline.state).toBe('ready');
    const next = new Worker('installing');
    registration.installing = next;
    registration.dispatchEvent(new Event('updatefound'));
    Object.assign(registration, { installing: null, waiting: next });
    next.become('installed');
    return { ...all, next };
  }

  test('a newer version comes while the page is open', async () => {
    const { offline, seen } = await withUpdate();
    expect(offline.state).toBe('update_waiting');
    expect(seen).toEqual(['ready', 'update_waiting']);
  });

  test('it is taken, and the page loads again', async () => {
    const { offline, next, keeper } = await withUpdate();
    next.answer = true;
    expect(await offline.takeUpdate()).toBe(true);
    expect(next.heard).toEqual(['take over']);
    expect(reload).not.toHaveBeenCalled();
    keeper.dispatchEvent(new Event('controllerchange'));
    expect(reload).toHaveBeenCalledTimes(1);
  });

  test('it is not taken while the page is open elsewhere', async () => {
    const { offline, next, keeper } = await withUpdate();
    next.answer = false;
    expect(await offline.takeUpdate()).toBe(false);
    keeper.dispatchEvent(new Event('controllerchange'));
    expect(reload).not.toHaveBeenCalled();
  });

  test('nobody is told any more who ended it', async () => {
    const registration = new Registration();
    registration.active = new Worker('activated');
    const { end, seen } = started(registration);
    end();
    await turn();
    expect(seen).toEqual([]);
  });
});
