// How far the phone's long edge leans from the vertical: held along a line, the line's lean.
import { Store } from '../state/store';

/**
 * - `off`; `asking`: the person is being asked; `waiting`: allowed, nothing read yet;
 * - `reading`: `lean` is fresh;
 * - `silent`: allowed, and yet this device reads nothing (most laptops);
 * - `refused`: by the person, the browser, or the way the page was opened;
 * - `missing`: this browser has no such thing.
 */
export type TiltState = 'off' | 'asking' | 'waiting' | 'reading' | 'silent' | 'refused' | 'missing';

export interface Lean {
  /** Of the long edge from the vertical, 0 (upright, either way up) to 90 (lying). */
  angle_deg: number;
  /** How much it moves about, each way, deg: a boat rolls. */
  spread_deg: number;
  at_ms: number;
}

export interface Tilt {
  state: TiltState;
  lean: Lean | null;
}

/** A hand and a boat shake: readings of so long count together, s. Judgement. */
const SMOOTHING_S = 1;
/** A device with a level reads many times a second; one without never does. ms */
export const SILENT_MS = 3_000;
const RAD = Math.PI / 180;

export interface Turn {
  beta: number | null;
  gamma: number | null;
}

/**
 * Lean of an edge, from the device's turns about its own axes (W3C, Device Orientation, section 4.1:
 * intrinsic Z-X'-Y'': x across, y along the screen, z out of it; from memory). The third row of the
 * rotation is the way up as the device sees it: (-cos beta sin gamma, sin beta, cos beta cos gamma).
 */
export function leanOf(beta_deg: number, gamma_deg: number, edge: 'x' | 'y'): number {
  const [b, g] = [beta_deg * RAD, gamma_deg * RAD];
  const up = { x: -Math.cos(b) * Math.sin(g), y: Math.sin(b), z: Math.cos(b) * Math.cos(g) };
  const along = Math.abs(edge === 'y' ? up.y : up.x);
  const beside = Math.hypot(edge === 'y' ? up.x : up.y, up.z);
  return Math.atan2(beside, along) / RAD;
}

/** What it needs of the browser. */
export interface TiltSurroundings {
  available: boolean;
  /** Only where the person must be asked. */
  ask: (() => Promise<'granted' | 'denied' | 'default'>) | undefined;
  listen(turned: (turn: Turn) => void): () => void;
  /** The device's own long edge: phones are tall, some tablets wide. */
  longEdge(): 'x' | 'y';
  now_ms(): number;
}

interface AskedEvent {
  requestPermission?: () => Promise<'granted' | 'denied' | 'default'>;
}

export function browserTilt(now_ms: () => number): TiltSurroundings {
  const event = globalThis.DeviceOrientationEvent as (typeof DeviceOrientationEvent & AskedEvent) | undefined;
  const ask = event?.requestPermission?.bind(event);
  return {
    available: event !== undefined && globalThis.isSecureContext !== false,
    ask,
    listen(turned) {
      const on = ({ beta, gamma }: DeviceOrientationEvent): void => turned({ beta, gamma });
      addEventListener('deviceorientation', on);
      return () => removeEventListener('deviceorientation', on);
    },
    longEdge() {
      const orientation = globalThis.screen?.orientation;
      if (!orientation) return 'y';
      const wideNow = orientation.type.startsWith('landscape');
      const turned = orientation.angle % 180 !== 0;
      return wideNow !== turned ? 'x' : 'y';
    },
    now_ms,
  };
}

export class TiltReader {
  readonly state: Store<Tilt>;
  private end: (() => void) | undefined;
  private silence: ReturnType<typeof setTimeout> | undefined;
  private mean: { angle: number; square: number; at_ms: number } | undefined;

  constructor(private readonly around: TiltSurroundings) {
    this.state = new Store<Tilt>({ state: around.available ? 'off' : 'missing', lean: null });
  }

  /** Must come from a tap: some browsers ask the person then, and only then. */
  async start(): Promise<void> {
    if (!this.around.available || this.end || this.state.get().state === 'asking') return;
    if (this.around.ask) {
      this.state.set({ state: 'asking', lean: null });
      const answer = await this.around.ask().catch(() => 'denied' as const);
      if (answer !== 'granted') {
        this.state.set({ state: 'refused', lean: null });
        return;
      }
    }
    this.state.set({ state: 'waiting', lean: null });
    this.expect();
    this.end = this.around.listen((turn) => this.take(turn));
  }

  stop(): void {
    clearTimeout(this.silence);
    this.end?.();
    this.end = undefined;
    this.mean = undefined;
    if (this.around.available) this.state.set({ state: 'off', lean: null });
  }

  private expect(): void {
    clearTimeout(this.silence);
    this.silence = setTimeout(() => {
      this.mean = undefined;
      this.state.set({ state: 'silent', lean: null });
    }, SILENT_MS);
  }

  private take({ beta, gamma }: Turn): void {
    // A device without a level gives one event of nothing.
    if (beta === null || gamma === null || !Number.isFinite(beta) || !Number.isFinite(gamma)) return;
    this.expect();
    const angle = leanOf(beta, gamma, this.around.longEdge());
    const at_ms = this.around.now_ms();
    const before = this.mean ?? { angle, square: 0, at_ms };
    const part = 1 - Math.exp(-(at_ms - before.at_ms) / 1000 / SMOOTHING_S);
    const off = angle - before.angle;
    this.mean = { angle: before.angle + part * off, at_ms,
      square: (1 - part) * (before.square + part * off * off) };
    this.state.set({ state: 'reading', lean: { angle_deg: this.mean.angle,
      spread_deg: Math.sqrt(this.mean.square), at_ms } });
  }
}
