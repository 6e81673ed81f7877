// The bottom, as the person knows it: off a sounder, a chart or a touch. Nothing else is assumed.
import { Ruler } from '../parts/Ruler';
import { depthScale } from '../parts/scales';
import { useApp, type AppState } from '../state/app';
import { useStore } from '../state/store';

const handOf = (state: AppState) => state.hand;
const unitsOf = (state: AppState) => state.settings.units;
/** Where the ruler starts when no bottom was given yet. */
const FIRST_M = 120 * 0.3048;

export function BottomTool() {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const units = useStore(app.state, unitsOf);
  if (hand.bottom_m === null) {
    return (
      <div class="row">
        <p class="whole">No bottom is drawn: Offplumb does not know it. Read it off your sounder.</p>
        <button type="button" class="button first"
          onClick={() => app.changeHand({ bottom_m: FIRST_M })}>Draw the bottom</button>
      </div>
    );
  }
  return (
    <>
      <Ruler name="Bottom" dimension="length" value={hand.bottom_m}
        scale={depthScale(units, 0, app.about.limits.largest_count_m)}
        onInput={(bottom_m) => app.changeHand({ bottom_m })} />
      <div class="row">
        <button type="button" class="button" onClick={() => app.changeHand({ bottom_m: null })}>
          Take the bottom away</button>
        <p class="whole soft">When the boat slows, the ball sinks. Keep room.</p>
      </div>
    </>
  );
}
