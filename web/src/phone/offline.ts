// Keeps the page on the phone, so that it opens with no network. sw.js does the keeping; here it is
// set up, and what it says is passed on.

/**
 * How far that is:
 * - `unsupported`: this browser, or the way the page was opened, cannot do it (plain http, the
 *   one-file form, a private window);
 * - `installing`: files are being put by; the network is still needed;
 * - `ready`: the page opens with no network from now on;
 * - `update_waiting`: as ready, and a newer version is put by; it is used from the next start, or
 *   at once with `takeUpdate`;
 * - `failed`: not all files came through; it is tried again at the next visit.
 */
export type OfflineState = 'unsupported' | 'installing' | 'ready' | 'update_waiting' | 'failed';

export interface Offline {
  readonly state: OfflineState;
  /** Called with every change; gives back what ends it. */
  subscribe(watcher: (state: OfflineState) => void): () => void;
  /**
   * Goes over to the version that waits, and loads the page again. False when there is none, or when
   * the page is open a second time elsewhere, which would lose its files: close that first.
   */
  takeUpdate(): Promise<boolean>;
}

/** Sets it up where the browser allows; never throws. Call it once, at the start of the page. */
export function startOffline(): Offline {
  return ONE_FILE ? nowhere : new Keeping(keeperOf(globalThis.navigator));
}

const nowhere: Offline = {
  state: 'unsupported',
  subscribe: () => () => undefined,
  takeUpdate: () => Promise.resolve(false),
};

class Keeping implements Offline {
  private current: OfflineState = 'unsupported';
  private registration: ServiceWorkerRegistration | undefined;
  private readonly watchers = new Set<(state: OfflineState) => void>();
  private readonly followed = new WeakSet<ServiceWorker>();

  constructor(private readonly keeper: ServiceWorkerContainer | undefined) {
    if (keeper) void this.register(keeper);
  }

  get state(): OfflineState {
    return this.current;
  }

  subscribe(watcher: (state: OfflineState) => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }

  async takeUpdate(): Promise<boolean> {
    const waiting = this.registration?.waiting;
    if (!waiting) return false;
    const reload = (): void => location.reload();
    this.keeper?.addEventListener('controllerchange', reload, { once: true });
    const taken = await asked(waiting, 'take over');
    if (!taken) this.keeper?.removeEventListener('controllerchange', reload);
    return taken;
  }

  private async register(keeper: ServiceWorkerContainer): Promise<void> {
    this.put('installing');
    try {
      const registration = await keeper.register(new URL('sw.js', document.baseURI));
      this.registration = registration;
      registration.addEventListener('updatefound', () => this.look());
      this.look();
    } catch {
      this.put(keeper.controller ? 'ready' : 'failed');
    }
  }

  /** Reads the state off the registration, and follows what is on its way. */
  private look(): void {
    const { installing, waiting, active } = this.registration ?? {};
    for (const worker of [installing, waiting, active]) this.follow(worker);
    if (active?.state === 'activated') this.put(waiting ? 'update_waiting' : 'ready');
    else this.put(installing || waiting || active ? 'installing' : 'failed');
  }

  private follow(worker: ServiceWorker | null | undefined): void {
    if (!worker || this.followed.has(worker)) return;
    this.followed.add(worker);
    worker.addEventListener('statechange', () => this.look());
  }

  private put(state: OfflineState): void {
    if (state === this.current) return;
    this.current = state;
    for (const watcher of [...this.watchers]) watcher(state);
  }
}

/** Says something to sw.js and waits for its yes or no. */
function asked(worker: ServiceWorker, words: string): Promise<boolean> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (event: MessageEvent<boolean>) => {
      port1.close();
      resolve(event.data);
    };
    worker.postMessage(words, [port2]);
  });
}

/** The browser's own keeper of pages: only over https or from this machine, and not everywhere. */
function keeperOf(navigator: Navigator | undefined): ServiceWorkerContainer | undefined {
  try {
    return globalThis.isSecureContext ? navigator?.serviceWorker : undefined;
  } catch {
    return undefined;
  }
}
