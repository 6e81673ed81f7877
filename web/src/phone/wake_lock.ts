// Keeps the screen from going dark. The browser takes the lock away whenever the page is hidden: it
// is taken again when the page is seen.
import { Store } from '../state/store';

/**
 * - `off`: not wanted; `on`: the screen stays on; `hidden`: on again when the page is seen;
 * - `refused`: the browser said no, as it does on a low battery;
 * - `missing`: this browser cannot.
 */
export type WakeState = 'off' | 'on' | 'hidden' | 'refused' | 'missing';

interface Sentinel {
  released: boolean;
  release(): Promise<void>;
  addEventListener(type: 'release', listener: () => void): void;
}

/** What it needs of the browser. */
export interface WakeSurroundings {
  request: (() => Promise<Sentinel>) | undefined;
  visible(): boolean;
  onVisibility(change: () => void): void;
}

function browserSurroundings(): WakeSurroundings {
  const wakeLock = globalThis.navigator?.wakeLock as WakeLock | undefined;
  return {
    request: wakeLock && (() => wakeLock.request('screen')),
    visible: () => document.visibilityState === 'visible',
    onVisibility: (change) => document.addEventListener('visibilitychange', change),
  };
}

export class ScreenWake {
  readonly state: Store<WakeState>;
  private readonly wanting = new Set<string>();
  private held: Sentinel | undefined;
  private asking = false;

  constructor(private readonly around: WakeSurroundings = browserSurroundings()) {
    this.state = new Store<WakeState>(around.request ? 'off' : 'missing');
    around.onVisibility(() => void this.settle());
  }

  /** Somebody wants the screen on, or no more. */
  want(who: string, wanted: boolean): void {
    if (this.wanting.has(who) === wanted) return;
    if (wanted) this.wanting.add(who);
    else this.wanting.delete(who);
    void this.settle();
  }

  /** Brings what is held in line with what is wanted. */
  private async settle(): Promise<void> {
    if (!this.around.request || this.asking) return;
    if (this.wanting.size === 0) {
      await this.letGo();
    } else if (!this.around.visible()) {
      this.state.set('hidden');
    } else if (this.held === undefined || this.held.released) {
      await this.take(this.around.request);
    }
  }

  private async take(request: () => Promise<Sentinel>): Promise<void> {
    this.asking = true;
    try {
      const held = await request();
      this.held = held;
      held.addEventListener('release', () => this.released(held));
      this.state.set('on');
    } catch {
      this.held = undefined;
      this.state.set(this.around.visible() ? 'refused' : 'hidden');
    } finally {
      this.asking = false;
    }
    if (this.wanting.size === 0) await this.letGo();
  }

  private async letGo(): Promise<void> {
    const { held } = this;
    this.held = undefined;
    this.state.set('off');
    await held?.release().catch(() => undefined);
  }

  private released(sentinel: Sentinel): void {
    if (this.held !== sentinel) return;
    this.held = undefined;
    this.state.set(this.around.visible() ? 'refused' : 'hidden');
  }
}
