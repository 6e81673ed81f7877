// The page's one two-way run.
import { startPhone } from '../../phone/start';
import { steadyClock } from '../../phone/steady_clock';
import { useApp, type App } from '../../state/app';
import type { Place } from './legs';
import { TwoWayRun } from './run';

const runs = new WeakMap<App, TwoWayRun>();

function browserPlace(): Place | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined;
  }
}

export function useRun(): TwoWayRun {
  const app = useApp();
  const known = runs.get(app);
  if (known) return known;
  const run = new TwoWayRun({
    phone: startPhone(app), place: browserPlace(),
    buzz: () => { navigator.vibrate?.(400); },
    now_ms: () => steadyClock.now_ms(), wall_ms: () => Date.now(),
  });
  runs.set(app, run);
  return run;
}
