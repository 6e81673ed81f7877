// A leg while it is recorded: large enough for one look.
import { usePhone } from '../../phone/start';
import type { PhoneSpeed } from '../../phone/phone_speed';
import { useApp } from '../../state/app';
import { useStore } from '../../state/store';
import type { LegSoFar } from './leg_recorder';
import { GOOD_S } from './run';
import { bearing, legTrouble } from './words';

const watchOf = (speed: PhoneSpeed) => speed.watch;

export function LegLive({ soFar, onStop }: { soFar: LegSoFar; onStop(): void }) {
  const { shower } = useApp();
  const watch = useStore(usePhone().speed.state, watchOf);
  const trouble = legTrouble(soFar, watch);
  const well = soFar.seconds >= GOOD_S ? 'A minute is full: stop when you like.'
    : 'Hold the heading and the throttle.';
  const known = soFar.course_deg !== null;
  const spread = soFar.spread_mps === null ? ''
    : ` Readings scatter by ${shower.quantity(soFar.spread_mps, 'speed')}.`;
  return (
    <>
      <div class="live">
        <span class="big">{Math.floor(soFar.seconds)}<span class="unit">s</span></span>
        <span class="big">{known ? shower.number(soFar.speed_mps, 'speed') : '–'}
          <span class="unit">{shower.unit('speed')}</span></span>
        <span class="big">{soFar.course_deg === null ? '–' : bearing(soFar.course_deg)}</span>
      </div>
      <p class={trouble ? 'wrong' : ''}>{trouble?.words ?? well}</p>
      <p class="visually-hidden" role="status">{trouble?.aloud ?? well}</p>
      <p class="soft">{known && `Mean over the leg.${spread}`}</p>
      <button type="button" class="button first stop" onClick={onStop}>Stop</button>
    </>
  );
}
