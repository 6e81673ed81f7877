// Puts a current that was found into hand: as the boat sees it on the way she goes now.
import { useState } from 'preact/hooks';
import type { TwoWayAnswer } from '../../engine/answers';
import { useApp, type AppState } from '../../state/app';
import { useStore } from '../../state/store';
import { seenFrom, withSurface } from './use_current';
import { bearing, surfaceWords } from './words';

const groundOf = (state: AppState) => state.ground;
const handOf = (state: AppState) => state.hand;

interface Way {
  id: 'now' | 'second' | 'first';
  name: string;
  deg: number;
}

/** The way she goes now by the phone, and those of the two legs. */
function useWays(answer: TwoWayAnswer): Way[] {
  const app = useApp();
  const ground = useStore(app.state, groundOf);
  const { usePhone } = useStore(app.state, handOf);
  const first = answer.first_heading_deg.median;
  const second = first + answer.turn_deg;
  const now = usePhone ? ground?.course_deg ?? null : null;
  return [
    ...(now === null ? [] : [{ id: 'now' as const, name: `now, ${bearing(now)}`, deg: now }]),
    { id: 'second', name: `2nd leg, ${bearing(second)}`, deg: second },
    { id: 'first', name: `1st leg, ${bearing(first)}`, deg: first },
  ];
}

export function UseCurrent({ answer }: { answer: TwoWayAnswer }) {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const ways = useWays(answer);
  const [chosen, setChosen] = useState<Way['id'] | undefined>();
  const way = ways.find(({ id }) => id === chosen) ?? ways[0];
  if (!way) return null;
  const { speed_mps, toward_deg } = answer.current;
  const surface = seenFrom(speed_mps.median, toward_deg.median, way.deg);
  const words = surfaceWords(surface, app.shower);
  const use = (): void => {
    const { current } = app.state.get().hand;
    app.changeHand({ current: withSurface(current, surface) });
    app.say(`In hand: ${words} at the top.`, () => app.changeHand({ current }));
  };
  const speed = app.shower.quantity(answer.water_speed_mps.median, 'speed');
  const useSpeed = (): void => {
    const { speed_mps: before } = app.state.get().hand;
    app.changeHand({ speed_mps: answer.water_speed_mps.median });
    app.say(`In hand: ${speed} through the water.`, () => app.changeHand({ speed_mps: before }));
  };
  return (
    <div class="use">
      <p id="which-way">As the boat goes:</p>
      <div class="ways-here" role="group" aria-labelledby="which-way">
        {ways.map(({ id, name }) => (
          <button type="button" key={id} class={id === way.id ? 'button chosen' : 'button'}
            aria-pressed={id === way.id} onClick={() => setChosen(id)}>{name}</button>
        ))}
      </div>
      <p>That is <strong>{words}</strong>.</p>
      <div class="row">
        <button type="button" class="button first" onClick={use}>Use this current</button>
        {!hand.usePhone && (
          <button type="button" class="button" onClick={useSpeed}>Set {speed} by hand</button>
        )}
      </div>
    </div>
  );
}
