// Speed: the phone's or the hand's, the current along the boat, and the two-way run that measures it.
import { Doors } from '../parts/Doors';
import { PhoneSwitch } from './speed/PhoneSwitch';
import { SpeedNow } from './speed/SpeedNow';
import { TwoWay } from './speed/TwoWay';
import './speed.css';

export function Speed() {
  return (
    <section class="screen speed" aria-labelledby="speed-title">
      <div class="speed-now">
        <h1 id="speed-title">Speed</h1>
        <PhoneSwitch />
        <SpeedNow />
      </div>
      <div class="speed-run">
        <TwoWay />
        <h2>What the phone gives this page</h2>
        <Doors />
      </div>
    </section>
  );
}
