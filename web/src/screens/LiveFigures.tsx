// The figures above the side view: ball and lures, and what is left below the ball.
import { Figure } from '../parts/Figure';
import { useApp, type AppState } from '../state/app';
import type { LiveView } from '../state/live';
import { useStore, type Store } from '../state/store';

const riggersOf = (view: LiveView) => view.riggers;
const nameOf = (state: AppState) => state.hand.rigger;
const bottomOf = (state: AppState) => state.hand.bottom_m;
const unitsOf = (state: AppState) => state.settings.units;

export function LiveFigures({ views }: { views: Store<LiveView> }) {
  const app = useApp();
  const name = useStore(app.state, nameOf);
  const bottom_m = useStore(app.state, bottomOf);
  useStore(app.state, unitsOf);
  const depth = useStore(views, riggersOf).find((rigger) => rigger.name === name)?.depth;
  const { shower } = app;
  const several = (depth?.lures.length ?? 0) > 1;
  const clearance = (band: { median: number; low: number; high: number }) =>
    bottom_m === null ? undefined
      : { median: bottom_m - band.median, low: bottom_m - band.high, high: bottom_m - band.low };
  const off = depth && clearance(depth.ball.depth_m);
  return (
    <div class="figures">
      <Figure name="Ball" value={depth?.ball.depth_m} shown="depth" shower={shower} />
      {depth?.lures.map((lure, i) => (
        <Figure key={lure.clip || i} shown="depth" shower={shower} value={lure.depth_m}
          name={several ? `Lure, ${lure.clip || `clip ${i + 1}`}` : 'Lure'} />
      ))}
      {off && (
        <Figure name={off.median < 0 ? 'Ball on the bottom by' : 'Ball off the bottom'} shown="depth"
          value={off.median < 0 ? { median: -off.median, low: -off.high, high: -off.low } : off}
          shower={shower} />
      )}
    </div>
  );
}
