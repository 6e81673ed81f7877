// A clock that neither jumps nor stops. The wall clock is set while one fishes (time zone, network
// time); the browser's own counter stands still in some phones while they sleep. An age taken from
// either alone could call an old fix new.

/** Wall and counter may part by so much without the phone having slept, ms. */
const SLEPT_MS = 2000;

export class SteadyClock {
  private ahead_ms: number;
  private slept_ms = 0;

  constructor(
    private readonly counter: () => number = () => performance.now(),
    private readonly wall: () => number = () => Date.now(),
  ) {
    this.ahead_ms = wall() - counter();
  }

  /**
   * Milliseconds since some moment; never less than before. A wall clock set forward looks like
   * sleep and is counted: what was known then is called older than it is, which does no harm.
   */
  now_ms(): number {
    const counted = this.counter();
    const parted = this.wall() - counted - this.ahead_ms;
    if (Math.abs(parted) > SLEPT_MS) {
      this.ahead_ms += parted;
      if (parted > 0) this.slept_ms += parted;
    }
    return counted + this.slept_ms;
  }
}

/** The page's one. */
export const steadyClock = new SteadyClock();
