// Why there is no answer for what is in hand, over the last good drawing.
import { useApp, type AppState } from '../state/app';
import type { LiveView } from '../state/live';
import { useStore, type Store } from '../state/store';

const riggersOf = (view: LiveView) => view.riggers;
const nameOf = (state: AppState) => state.hand.rigger;

export function LiveTrouble({ views }: { views: Store<LiveView> }) {
  const app = useApp();
  const name = useStore(app.state, nameOf);
  const rigger = useStore(views, riggersOf).find((r) => r.name === name);
  if (!rigger?.problem) return null;
  return (
    <p class="trouble" role="alert">
      {rigger.problem.message} {rigger.problem.remedy}
      {rigger.depth && ' The drawing shows the last that could be worked out.'}
    </p>
  );
}
