// Everything of the phone's that the page uses, started once. All of it may be missing: the page
// works without.
import { useApp, type App } from '../state/app';
import { PlaceWatch } from './geolocation';
import { startOffline, type Offline } from './offline';
import { SpeedKeeper } from './phone_speed';
import { steadyClock } from './steady_clock';
import { browserTilt, TiltReader } from './tilt';
import { ScreenWake } from './wake_lock';

export interface Phone {
  speed: SpeedKeeper;
  wake: ScreenWake;
  tilt: TiltReader;
  offline: Offline;
}

const phones = new WeakMap<App, Phone>();

/** Starts it for this page; a second call gives the same. */
export function startPhone(app: App): Phone {
  const started = phones.get(app);
  if (started) return started;
  const now_ms = (): number => steadyClock.now_ms();
  const phone: Phone = {
    speed: new SpeedKeeper(app, new PlaceWatch(), now_ms),
    wake: new ScreenWake(),
    tilt: new TiltReader(browserTilt(now_ms)),
    offline: startOffline(),
  };
  phones.set(app, phone);
  const keepAwake = (): void => phone.wake.want('setting', app.state.get().settings.keepAwake);
  app.state.watch(keepAwake);
  keepAwake();
  return phone;
}

export function usePhone(): Phone {
  return startPhone(useApp());
}
