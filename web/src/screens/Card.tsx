// The card of the rig in hand: depths over counts and speeds, on the screen and on paper.
import { useState } from 'preact/hooks';
import type { CardAnswer } from '../engine/answers';
import type { CardRequest } from '../engine/requests';
import { Notes } from '../parts/Remarks';
import { RiggerChoice } from '../parts/RiggerChoice';
import { SeriesField } from '../parts/SeriesField';
import { useApp, type AppState, type GoodRig } from '../state/app';
import { FULL_ONLY, useChase, type Chased } from '../state/chase';
import { seaOf, type GroundSpeed, type Hand } from '../state/sea';
import { useStore } from '../state/store';
import { capital, lureName } from '../state/words';
import { CardPaper } from './CardPaper';
import { CardTable } from './CardTable';
import { gridOf, today, type Thing } from './card_cells';
import './card.css';

const whole = (state: AppState) => state;

/** What the page asks for; null: the engine's own choice. */
interface Axes {
  speeds_mps: number[] | null;
  counts_m: number[] | null;
}

function requestFor(rig: GoodRig, rigger: string, hand: Hand, ground: GroundSpeed | null,
  units: CardRequest['units'], axes: Axes): CardRequest {
  // The card has speeds of its own.
  const { speed_mps: _speed, ...sea } = seaOf(hand, ground);
  return {
    question: 'card', rig_toml: rig.toml, rigger, ball_mass_kg: hand.balls_kg[rigger] ?? null,
    ...axes, ...sea, bands: true, units, sheet: true, date: today(),
  };
}

export function Card() {
  const app = useApp();
  const state = useStore(app.state, whole);
  const rig = app.activeRig();
  const rigger = rig?.facts.riggers.find(({ name }) => name === state.hand.rigger) ?? rig?.facts.riggers[0];
  if (!rig || !rigger) {
    return (
      <section class="screen">
        <h1>Card</h1>
        <p>There is no rig that can be read. Mend one, or make one, under <a href="#rigs">Rigs</a>.</p>
      </section>
    );
  }
  return <CardOf rig={rig} rigger={rigger} state={state} />;
}

function CardOf({ rig, rigger, state }: {
  rig: GoodRig; rigger: GoodRig['facts']['riggers'][number]; state: AppState;
}) {
  const { about } = useApp();
  const { hand, settings } = state;
  const [thing, setThing] = useState<Thing>('ball');
  const [axes, setAxes] = useState<Axes>({ speeds_mps: null, counts_m: null });
  // As it was when the card was opened: only its angle to the current has a say in the depths.
  const [ground] = useState(state.ground);
  const view = useChase<CardRequest>(
    [[rigger.name, requestFor(rig, rigger.name, hand, ground, settings.units, axes)]], FULL_ONLY);
  const chased = view.get(rigger.name);
  const answer = chased?.answer;
  const shownThing = thing === 'ball' || thing < rigger.clips.length ? thing : 'ball';
  const name = shownThing === 'ball' ? 'the ball' : lureName(rigger.clips, shownThing);
  const kind = answer?.inputs['speed_kind'] === 'over_ground' ? 'over ground' : 'through the water';
  const grid = answer && gridOf(answer, shownThing);
  return (
    <section class={answer?.riggers[0]?.sheet ? 'screen card-screen with-sheet' : 'screen card-screen'}
      aria-labelledby="card-title" aria-busy={!(chased?.done ?? false)}>
      <div class="card-work">
        <div class="card-head">
          <h1 id="card-title">Card</h1>
          <a href="#rigs">Another rig</a>
        </div>
        <p class="card-rig">{rig.facts.name}: {rigger.name}</p>
        <Cautions answer={answer} />
        <div class="card-choices">
          <RiggerChoice />
          {rigger.clips.length > 0 && (
            <div class="card-things" role="group" aria-label="Depth of">
              {(['ball', ...rigger.clips.keys()] as Thing[]).map((one) => (
                <button type="button" key={one} class={one === shownThing ? 'button chosen' : 'button'}
                  aria-pressed={one === shownThing} onClick={() => setThing(one)}>
                  {one === 'ball' ? 'Ball' : capital(lureName(rigger.clips, one).replace(/^the /, ''))}
                </button>
              ))}
            </div>
          )}
        </div>
        {chased?.problem && (
          <p class="wrong" role="alert">{chased.problem.message} {chased.problem.remedy}
            {answer && !chased.current && ' Below stands the last card that could be worked out.'}</p>
        )}
        {answer && grid && (
          <CardTable answer={answer} grid={grid} banded={chased.draws > 0}
            title={`Depth of ${name}, by count and speed ${kind}`}
            largest_angle_deg={rigger.largest_boom_angle_deg} />
        )}
        <p role="status" class="card-status">{statusOf(chased)}</p>
        {answer && (
          <div class="card-axes">
            <SeriesField name="Counts" values={answer.counts_m} shown="depth" dimension="length"
              low={0} high={rigger.line_on_reel_m}
              onSet={(counts_m) => setAxes({ ...axes, counts_m })}
              onUsual={axes.counts_m ? () => setAxes({ ...axes, counts_m: null }) : undefined} />
            <SeriesField name="Speeds" values={answer.speeds_mps} shown="speed" dimension="speed"
              low={0} high={about.limits.largest_speed_mps}
              onSet={(speeds_mps) => setAxes({ ...axes, speeds_mps })}
              onUsual={axes.speeds_mps ? () => setAxes({ ...axes, speeds_mps: null }) : undefined} />
          </div>
        )}
      </div>
      {chased && answer && (
        <CardPaper answer={answer} ready={chased.done && !chased.problem}
          failed={chased.problem !== undefined} rig={rig.facts.name} rigger={rigger.name}
          assumedHeading={ground === null || !hand.usePhone}
          anyCurrent={answer.inputs['current'] !== null} />
      )}
      <div class="card-work"><Notes lines={answer?.notes ?? []} /></div>
     
    </section>
  );
}

/** The first above the figures, the others a touch away: a card is read at home. */
function Cautions({ answer }: { answer: CardAnswer | undefined }) {
  const [first, ...others] = answer?.cautions ?? [];
  if (first === undefined) return null;
  return (
    <aside class="caution" aria-label="Cautions">
      <p>{first}</p>
      {others.length > 0 && (
        <details>
          <summary>{others.length} more</summary>
          {others.map((line) => <p key={line}>{line}</p>)}
        </details>
      )}
    </aside>
  );
}

function statusOf(chased: Chased<CardAnswer> | undefined): string {
  if (chased?.problem) return '';
  if (!chased?.answer) return 'Working out the card …';
  return chased.done ? 'Below each depth its band: 9 times in 10 it is within.' : 'Working out the bands …';
}
