// Which rigger the fingers move: one button each, nothing where there is only one.
import { useApp, type AppState } from '../state/app';
import { useStore } from '../state/store';

const handOf = (state: AppState) => state.hand;

export function RiggerChoice() {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const riggers = app.activeRig()?.facts.riggers ?? [];
  if (riggers.length < 2) return null;
  return (
    <div class="rigger-choice" role="group" aria-label="Rigger">
      {riggers.map(({ name }) => (
        <button key={name} type="button" class={name === hand.rigger ? 'button chosen' : 'button'}
          aria-pressed={name === hand.rigger} onClick={() => app.changeHand({ rigger: name })}>
          {name} {app.shower.number(hand.counts_m[name] ?? 0, 'depth')}
        </button>
      ))}
    </div>
  );
}
