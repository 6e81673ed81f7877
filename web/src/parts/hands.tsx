// What is in hand as rulers: count, speed, ball, wanted depth. Shared by the screens.
import { ageWords, useAge } from '../phone/age';
import { useMemo } from 'preact/hooks';
import { useApp, type App, type AppState } from '../state/app';
import { useStore } from '../state/store';
import { Ruler, type Followed } from './Ruler';
import { ballScale, depthScale, speedScale } from './scales';

const unitsOf = (state: AppState) => state.settings.units;
const groundOf = (state: AppState) => state.ground;
const riggerOf = (state: AppState) => state.hand.rigger;
const countOf = ({ hand }: AppState) => hand.counts_m[hand.rigger] ?? 0;
const ballOf = ({ hand }: AppState) => hand.balls_kg[hand.rigger];
const speedOf = (state: AppState) => state.hand.speed_mps;
const byPhoneOf = (state: AppState) => state.hand.usePhone;

/** A part of what is in hand, to be shown as it changes. */
function useFollowed(app: App, pick: (state: AppState) => number): Followed {
  return useMemo(() => ({
    get: () => pick(app.state.get()),
    watch: (watcher) => {
      let last = pick(app.state.get());
      return app.state.watch(() => {
        const now = pick(app.state.get());
        if (now === last) return;
        last = now;
        watcher();
      });
    },
  }), [app, pick]);
}

/** Each ruler watches its own value only: the others rest while one is dragged. */
function useRigger() {
  const app = useApp();
  const units = useStore(app.state, unitsOf);
  const name = useStore(app.state, riggerOf);
  useStore(app.state, (state) => state.activeRig);
  useStore(app.state, (state) => state.rigs);
  const rigger = app.activeRig()?.facts.riggers.find((r) => r.name === name);
  return { app, units, rigger };
}

/** The count of the chosen rigger. */
export function CountRuler() {
  const { app, units, rigger } = useRigger();
  const count_m = useFollowed(app, countOf);
  if (!rigger) return null;
  return (
    <Ruler name="Count" dimension="length" value={count_m}
      scale={depthScale(units, 0, rigger.line_on_reel_m)}
      onInput={(count) => app.changeHand({
        counts_m: { ...app.state.get().hand.counts_m, [rigger.name]: count } })} />
  );
}

/** Speed through the water; or over ground, by the phone. */
export function SpeedRuler() {
  const app = useApp();
  const units = useStore(app.state, unitsOf);
  const speed_mps = useFollowed(app, speedOf);
  const usePhone = useStore(app.state, byPhoneOf);
  const ground = useStore(app.state, groundOf);
  const byPhone = usePhone && ground !== null;
  const age_ms = useAge(byPhone && ground.old ? ground.at_ms : undefined);
  const byGps = age_ms === undefined ? 'GPS' : `GPS, ${ageWords(age_ms)} old`;
  return (
    <Ruler name={usePhone && !byPhone ? 'Speed: no GPS' : 'Speed'} dimension="speed"
      value={byPhone ? ground.speed_mps : speed_mps}
      scale={speedScale(units)} setBy={byPhone ? byGps : undefined}
      onInput={(speed) => app.changeHand({ speed_mps: speed })} />
  );
}

/** The ball of the chosen rigger. */
export function BallRuler() {
  const { app, units, rigger } = useRigger();
  const mass_kg = useStore(app.state, ballOf);
  if (!rigger) return null;
  const { ball } = rigger;
  return (
    <Ruler name="Ball" dimension="mass" value={mass_kg ?? ball.mass_kg}
      scale={ballScale(units, ball.smallest_mass_kg, ball.largest_mass_kg)}
      onInput={(mass) => app.changeHand({
        balls_kg: { ...app.state.get().hand.balls_kg, [rigger.name]: mass } })} />
  );
}
