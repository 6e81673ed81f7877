// The two-way run, step by step on the screen itself: hold one heading, turn, hold the reverse.
import { useEffect, useRef, useState } from 'preact/hooks';
import { Cautions } from '../../parts/Remarks';
import { usePhone } from '../../phone/start';
import type { PhoneSpeed } from '../../phone/phone_speed';
import { useApp, type AppState } from '../../state/app';
import { useStore } from '../../state/store';
import { Found } from './Found';
import { LegByHand } from './LegByHand';
import { LegKept } from './LegKept';
import { LegLive } from './LegLive';
import { GOOD_S, LEAST_S, type RunState, type TwoWayRun, type Which } from './run';
import { useRun } from './use_run';
import { legFigures } from './words';

const all = (state: RunState) => state;
const watchOf = (speed: PhoneSpeed) => speed.watch;
const unitsOf = (state: AppState) => state.settings.units;
const NAMES = ['First leg', 'Second leg'] as const;
/** What counts before the run; the engine's own cautions come with its answer. Common practice. */
const LOOK_OUT = [
  'Look out, not at this screen, all the more alone: start, put the phone down, hold the heading. It ' +
  'buzzes at one minute where it can, and stopping later loses nothing. Break off for any boat, line or shoal.',
];

export function TwoWay() {
  const app = useApp();
  const run = useRun();
  useStore(app.state, unitsOf);
  const { legs, running } = useStore(run.state, all);
  const [typing, setTyping] = useState<Which | null>(null);
  const again = (): void => app.say('Both legs are put away.', run.clear());
  return (
    <section class="two-way" aria-labelledby="two-way-title">
      <h2 id="two-way-title">Measure the current</h2>
      <p>A two-way run: one heading out, the reverse back, one throttle.</p>
      <Cautions lines={LOOK_OUT} />
      <ol>
        {NAMES.map((name, i) => (
          <li key={name}>
            <Step which={i as Which} name={name} run={run} typing={typing === i}
              onType={(on) => setTyping(on ? (i as Which) : null)} />
          </li>
        ))}
      </ol>
      <Found legs={legs} />
      {(legs[0] || legs[1]) && !running && (
        <button type="button" class="button" onClick={again}>Begin again</button>
      )}
    </section>
  );
}

interface StepProps {
  which: Which;
  name: string;
  run: TwoWayRun;
  typing: boolean;
  onType(on: boolean): void;
}

function Step({ which, name, run, typing, onType }: StepProps) {
  const { legs, running } = useStore(run.state, all);
  const stop = useStop();
  const leg = legs[which];
  const region = useRef<HTMLDivElement>(null);
  const state = running?.which === which ? 'live' : typing ? 'typing' : leg ? 'kept' : 'open';
  // A button that was tapped goes away with its step: the keyboard's place stays in the step.
  const before = useRef(state);
  useEffect(() => {
    if (before.current !== state && document.activeElement === document.body) {
      region.current?.querySelector<HTMLElement>('button, input')?.focus({ preventScroll: true });
    }
    before.current = state;
  }, [state]);
  return (
    <div ref={region} class={`leg ${state}`} role="group" aria-label={name}>
      <h3>{name}</h3>
      {state === 'live' && running && <LegLive soFar={running.soFar} onStop={() => stop(run, name)} />}
      {state === 'typing' && (
        <LegByHand leg={leg} onDone={(typed) => { if (typed) run.putLeg(which, typed); onType(false); }} />
      )}
      {state === 'kept' && leg && (
        <LegKept leg={leg} onChange={(next) => run.putLeg(which, next)} />
      )}
      {state === 'open' && <p>{which === 0 ? FIRST : second(legs[0]?.heading_deg ?? null)}</p>}
      {(state === 'open' || state === 'kept') && (
        <Start which={which} name={name} run={run} again={leg !== null} onType={() => onType(true)} />
      )}
    </div>
  );
}

const FIRST = 'Hold one heading by the compass or a far mark, at trolling throttle, for a minute or two.';

function second(heading_deg: number | null): string {
  const reverse = heading_deg === null ? ''
    : `: ${Math.round(heading_deg + 180) % 360} by the compass`;
  return `Turn round wide. Hold the reverse${reverse}, same throttle. Not the course that the phone ` +
    'shows: that would hide the current across.';
}

function Start({ which, name, run, again, onType }:
  { which: Which; name: string; run: TwoWayRun; again: boolean; onType(): void }) {
  const app = useApp();
  const phone = usePhone();
  const watch = useStore(phone.speed.state, watchOf);
  const { legs, running } = useStore(run.state, all);
  const start = (): void => {
    if (watch === 'refused') phone.speed.askAgain();
    run.start(which);
    if (again) app.say(`${name}: begun anew.`, () => run.leave());
  };
  const next = !again && (which === 0 || legs[0] !== null);
  return (
    <div class="row">
      <button type="button" class={next ? 'button first' : 'button'} onClick={start}
        disabled={running !== null || watch === 'missing'}>
        {again ? 'Record again' : 'Start'}</button>
      <button type="button" class="button plain" disabled={running !== null} onClick={onType}>
        {again ? 'Change by hand' : 'Type it'}</button>
      {watch === 'missing' && <p>This browser gives no speed: type the legs.</p>}
    </div>
  );
}

function useStop() {
  const app = useApp();
  return (run: TwoWayRun, name: string): void => {
    const stopped = run.stop();
    if (!stopped) {
      app.say(`${name}: the phone gave no speed, so nothing is recorded. Try again, or type the leg.`);
      return;
    }
    const { leg, goOn } = stopped;
    const short = leg.seconds < LEAST_S ? ` That is short: at least ${LEAST_S} s, better ${GOOD_S} s.` : '';
    app.say(`${name} kept: ${legFigures(leg, app.shower)}.${short}`, goOn);
  };
}
