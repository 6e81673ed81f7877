// The age of what was measured, counted on while it is looked at.
import { useEffect, useState } from 'preact/hooks';
import { steadyClock } from './steady_clock';

/** "2 s", "3 min", "2 h". */
export function ageWords(age_ms: number): string {
  const seconds = Math.max(0, Math.round(age_ms / 1000));
  if (seconds < 120) return `${seconds} s`;
  const minutes = Math.round(seconds / 60);
  return minutes < 120 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
}

/** Age of a moment of the steady clock, ms, counted on each second; nothing for no moment. */
export function useAge(at_ms: number | undefined): number | undefined {
  const [, setTick] = useState(0);
  useEffect(() => {
    if (at_ms === undefined) return undefined;
    const timer = setInterval(() => setTick((n) => n + 1), 1000);
    return () => clearInterval(timer);
  }, [at_ms === undefined]);
  return at_ms === undefined ? undefined : steadyClock.now_ms() - at_ms;
}
