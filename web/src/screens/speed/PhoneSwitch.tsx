// The switch for the phone's own speed, and how it stands with it.
import { usePhone } from '../../phone/start';
import type { PhoneSpeed } from '../../phone/phone_speed';
import { useApp, type AppState } from '../../state/app';
import { useStore } from '../../state/store';
import { phoneWords } from './words';

const usedOf = (state: AppState) => state.hand.usePhone;
const all = (speed: PhoneSpeed) => speed;

export function PhoneSwitch() {
  const app = useApp();
  const phone = usePhone();
  const used = useStore(app.state, usedOf);
  const speed = useStore(phone.speed.state, all);
  return (
    <div class="speed-switch">
      <button type="button" role="switch" aria-checked={used} class="button" aria-describedby="phone-words"
        onClick={() => app.changeHand({ usePhone: !used })}>
        <span class="box" aria-hidden="true">{used ? '✕' : ''}</span>
        Use the phone’s speed
      </button>
      <p id="phone-words" role="status">{phoneWords(speed, used)}</p>
    </div>
  );
}
