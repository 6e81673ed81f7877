// The speed that is reckoned with now, as large as it goes; and what it makes through the water.
import { currentScale } from '../../parts/scales';
import { Ruler } from '../../parts/Ruler';
import { SpeedRuler } from '../../parts/hands';
import { useAge } from '../../phone/age';
import { useApp, type AppState } from '../../state/app';
import { shiftAlong } from '../../state/profile';
import { STILL } from '../../state/sea';
import { useStore } from '../../state/store';
import { turnedRound } from './use_current';
import { ageAndAccuracy, bearing, compassPoint, surfaceWords } from './words';

const handOf = (state: AppState) => state.hand;
const groundOf = (state: AppState) => state.ground;
const unitsOf = (state: AppState) => state.settings.units;

export function SpeedNow() {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const ground = useStore(app.state, groundOf);
  const units = useStore(app.state, unitsOf);
  const byPhone = hand.usePhone && ground !== null;
  const top = hand.current[0] ?? STILL;
  const turn = (): void => {
    const { current } = app.state.get().hand;
    app.changeHand({ current: turnedRound(current) });
    app.say('Turned round: the current now runs the other way past the boat.',
      () => app.changeHand({ current }));
  };
  return (
    <>
      {byPhone ? <ByPhone /> : <ByHand />}
      <div class="dial">
        <Ruler name="With me +" dimension="speed" value={top.along_mps} scale={currentScale(units)}
          onInput={(mps) => app.changeHand({ current: shiftAlong(hand.current, mps) })} />
        <div class="row">
          <p class="grow">Current: {surfaceWords(top, app.shower)}
            {hand.current.length > 1 && <span class="soft"> at the top, below as drawn</span>}</p>
          <button type="button" class="button" onClick={turn}
            disabled={hand.current.every((p) => p.along_mps === 0 && p.across_mps === 0)}>
            I turned round</button>
        </div>
      </div>
      <OtherSpeed along_mps={top.along_mps} />
    </>
  );
}

interface DigitsProps {
  name: string;
  mps: number;
  below?: string;
  words?: string;
  old?: boolean | undefined;
}

function Digits({ name, mps, below, words, old }: DigitsProps) {
  const { shower } = useApp();
  return (
    <div class={old ? 'figure speed-digits old' : 'figure speed-digits'}>
      <span class="name">{name}</span>
      <span class="digits">{shower.number(mps, 'speed')}<span class="unit">{shower.unit('speed')}</span></span>
      {below && <span class="course">{below}</span>}
      {words && <span class="band">{words}</span>}
    </div>
  );
}

function ByPhone() {
  const app = useApp();
  const ground = useStore(app.state, groundOf);
  const age_ms = useAge(ground?.at_ms);
  if (!ground) return null;
  const course = ground.course_deg === null ? 'no course: hardly moving'
    : `course ${bearing(ground.course_deg)} ${compassPoint(ground.course_deg)}`;
  return (
    <Digits mps={ground.speed_mps} below={course} old={ground.old}
      name={ground.old ? 'Over ground, OLD' : 'Over ground'}
      words={ageAndAccuracy(age_ms ?? 0, ground.accuracy_mps, app.shower)} />
  );
}

function ByHand() {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  return (
    <>
      <Digits name="Through the water, set by hand" mps={hand.speed_mps} />
      <SpeedRuler />
      <p class="soft hint">Set what the boat’s log reads. No log: a two-way run, typed below off
        any instrument that shows speed and course over ground, tells it.</p>
    </>
  );
}

/** The other of the two: through the water, or over ground. Shown only; the engine gets both. */
function OtherSpeed({ along_mps }: { along_mps: number }) {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const ground = useStore(app.state, groundOf);
  const { shower } = app;
  const byPhone = hand.usePhone && ground !== null;
  const mps = byPhone ? ground.speed_mps - along_mps : hand.speed_mps + along_mps;
  const back = Number(shower.number(mps, 'speed')) < 0;
  const name = byPhone ? 'Through the water' : 'Over ground';
  const speed = shower.quantity(byPhone ? ground.speed_mps : hand.speed_mps, 'speed');
  const none = Number(shower.number(along_mps, 'speed')) === 0;
  const words = none ? 'the same: no current is set'
    : `${speed} ${byPhone ? 'over ground less' : 'and'} the current along the boat` +
      (back ? `: ${byPhone ? 'the water overtakes her' : 'she is carried back'}` : '');
  return (
    <div class="figure other">
      <span class="name">{name}</span>
      <span class="digits">{shower.number(mps, 'speed')}<span class="unit">{shower.unit('speed')}</span></span>
      <span class="band">{words}</span>
    </div>
  );
}
