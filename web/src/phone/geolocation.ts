// Watches where the phone is. Being refused, finding nothing, falling silent and coming back are all
// states of it, never faults.
import { FixClock } from './fix_clock';
import type { Fix } from './fix';
import { steadyClock } from './steady_clock';
import { Store } from '../state/store';

/**
 * - `off`: nobody wants to know;
 * - `starting`: asked for; no fix yet (the person may still be answering the browser's question);
 * - `fixing`: fixes come;
 * - `silent`: there were fixes, and now the phone finds itself no more;
 * - `nothing`: as silent, and there was none before;
 * - `refused`: the person, the browser or the way the page was opened does not allow it;
 * - `missing`: this browser has no such thing.
 */
export type WatchState =
  'off' | 'starting' | 'fixing' | 'silent' | 'nothing' | 'refused' | 'missing';

/** After so long without a fix it is said that there is none, ms. */
export const SILENT_MS = 5_000;
/** Some browsers let a watch die without a word, above all when the page was hidden: begin anew. ms */
export const ANEW_MS = 30_000;
/** How long the browser may look before it says that it found nothing, ms. */
const TIMEOUT_MS = 15_000;

const REFUSED = 1;

/** What it needs of the browser. */
export interface Surroundings {
  geolocation: Pick<Geolocation, 'watchPosition' | 'clearWatch'> | undefined;
  /** Calls back when the person changes the permission; may never do so. */
  onPermission(change: (state: PermissionState) => void): void;
  /** Calls back when the page is seen again. */
  onSeen(seen: () => void): void;
  now_ms(): number;
}

export function browserSurroundings(): Surroundings {
  return {
    geolocation: globalThis.navigator?.geolocation,
    onPermission(change) {
      // Not every browser has it, and some do not know this name.
      navigator.permissions?.query({ name: 'geolocation' }).then((status) => {
        status.addEventListener('change', () => change(status.state));
      }, () => undefined);
    },
    onSeen(seen) {
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') seen();
      });
    },
    now_ms: () => steadyClock.now_ms(),
  };
}

export class PlaceWatch {
  readonly state: Store<WatchState>;
  private readonly clock = new FixClock();
  private readonly listeners = new Set<(fix: Fix) => void>();
  private watch: number | undefined;
  private silence: ReturnType<typeof setTimeout> | undefined;
  private anew: ReturnType<typeof setTimeout> | undefined;
  private hadFix = false;

  constructor(private readonly around: Surroundings = browserSurroundings()) {
    this.state = new Store<WatchState>(around.geolocation ? 'off' : 'missing');
    around.onPermission((permission) => this.permissionChanged(permission));
    around.onSeen(() => { if (this.isOn) this.begin(); });
  }

  /** Called with every fix; gives back what ends it. */
  listen(listener: (fix: Fix) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Begins to watch; after a refusal it asks once more. */
  start(): void {
    if (!this.around.geolocation || this.isOn) return;
    this.hadFix = false;
    this.state.set('starting');
    this.begin();
  }

  stop(): void {
    if (this.state.get() === 'missing') return;
    this.end();
    this.state.set('off');
  }

  private get isOn(): boolean {
    return !['off', 'refused', 'missing'].includes(this.state.get());
  }

  private begin(): void {
    this.end();
    this.anew = setTimeout(() => this.begin(), ANEW_MS);
    this.silence = setTimeout(() => this.fallSilent(), this.hadFix ? SILENT_MS : TIMEOUT_MS);
    try {
      this.watch = this.around.geolocation?.watchPosition(
        (position) => this.take(position), (error) => this.fail(error),
        { enableHighAccuracy: true, maximumAge: 0, timeout: TIMEOUT_MS });
    } catch {
      // Some browsers throw where the page has no right to ask.
      this.refuse();
    }
  }

  private end(): void {
    clearTimeout(this.silence);
    clearTimeout(this.anew);
    if (this.watch !== undefined) this.around.geolocation?.clearWatch(this.watch);
    this.watch = undefined;
  }

  private take({ coords, timestamp }: GeolocationPosition): void {
    if (!this.isOn) return;
    this.hadFix = true;
    clearTimeout(this.silence);
    clearTimeout(this.anew);
    this.silence = setTimeout(() => this.fallSilent(), SILENT_MS);
    this.anew = setTimeout(() => this.begin(), ANEW_MS);
    this.state.set('fixing');
    const fix: Fix = {
      at_ms: this.clock.place(timestamp, this.around.now_ms()),
      latitude_deg: coords.latitude, longitude_deg: coords.longitude, accuracy_m: coords.accuracy,
      speed_mps: coords.speed, heading_deg: coords.heading,
    };
    for (const listener of [...this.listeners]) listener(fix);
  }

  private fail(error: { code: number }): void {
    if (!this.isOn) return;
    // Everything else passes by itself: the watch goes on.
    if (error.code === REFUSED) this.refuse();
    else if (!this.hadFix) this.fallSilent();
  }

  private fallSilent(): void {
    this.state.set(this.hadFix ? 'silent' : 'nothing');
  }

  private refuse(): void {
    this.end();
    this.state.set('refused');
  }

  private permissionChanged(permission: PermissionState): void {
    const state = this.state.get();
    if (permission === 'granted' && state === 'refused') this.start();
    if (permission === 'denied' && this.isOn) this.refuse();
  }
}
