// A leg typed by hand: off a plotter, or off another phone.
import { useState } from 'preact/hooks';
import { useApp } from '../../state/app';
import type { KeptLeg } from './legs';
import { QuantityInput } from './QuantityInput';
import { bearing } from './words';
import { ageWords } from '../../phone/age';

interface Props {
  leg: KeptLeg | null;
  /** Null: left as it was. */
  onDone(leg: KeptLeg | null): void;
}

const DEG = 180 / Math.PI;
const USUAL_S = 60;

export function LegByHand({ leg, onDone }: Props) {
  const { shower } = useApp();
  const [speed, setSpeed] = useState<number | null>(leg?.ground_speed_mps ?? null);
  const [course, setCourse] = useState<number | null>(leg?.course_deg ?? null);
  const [seconds, setSeconds] = useState<number | null>(leg?.seconds ?? USUAL_S);
  const [missing, setMissing] = useState<string | undefined>();
  const done = (event: Event): void => {
    event.preventDefault();
    if (speed === null || course === null || seconds === null) {
      setMissing('A leg needs its speed over ground, its course, and how long it was held.');
      return;
    }
    onDone({ ground_speed_mps: speed, course_deg: course, seconds, by: 'hand', spread_mps: null,
      heading_deg: leg?.heading_deg ?? null, log_mps: leg?.log_mps ?? null, left_out_s: 0,
      ended_ms: Date.now() });
  };
  return (
    <form onSubmit={done} onKeyDown={(event) => { if (event.key === 'Escape') onDone(null); }}>
      <div class="fields">
        <QuantityInput name="Speed over ground" onInput={setSpeed}
          value={speed === null ? '' : shower.quantity(speed, 'speed')}
          asked={{ dimension: 'speed', subject: 'speed over ground', unit: shower.unit('speed') }} />
        <QuantityInput name="Course over ground"
          value={course === null ? '' : `${Number(bearing(course).slice(0, -1))} deg`}
          asked={{ dimension: 'angle', subject: 'course', unit: 'deg', low: 0, high: 360 / DEG }}
          onInput={(rad) => setCourse(rad === null ? null : rad * DEG)} />
        <QuantityInput name="Held for" onInput={setSeconds}
          value={seconds === null ? '' : ageWords(1000 * seconds)}
          asked={{ dimension: 'time', subject: 'time held', unit: 's' }} />
      </div>
      {missing && <p class="wrong" role="alert">{missing}</p>}
      <div class="row">
        <button type="submit" class="button first">Keep</button>
        <button type="button" class="button plain" onClick={() => onDone(null)}>Leave</button>
      </div>
    </form>
  );
}
