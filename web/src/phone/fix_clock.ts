// When a fix was made, on the steady clock. A fix carries the time of a clock of its own: it may
// run minutes beside ours, and may be set on the way.

/** A fix that took longer on its way was not late: its clock was set. ms. */
const LATEST_MS = 15_000;
/** So many fixes back the quickest delivery is looked for. */
const REMEMBERED = 10;

export class FixClock {
  /** Arrival less the fix's own time, of the latest fixes. */
  private lags: number[] = [];

  /** \p own_ms as the fix has it; \p arrived_ms by the steady clock. Never after the arrival. */
  place(own_ms: number, arrived_ms: number): number {
    if (!Number.isFinite(own_ms)) return arrived_ms;
    const lag = arrived_ms - own_ms;
    const quickest = Math.min(...this.lags, lag);
    this.lags = lag - quickest > LATEST_MS ? [lag] : [...this.lags.slice(1 - REMEMBERED), lag];
    return own_ms + Math.min(...this.lags);
  }
}
