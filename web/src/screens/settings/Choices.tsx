// What is chosen once: units, look, water, and the screen that stays on.
import { Doors } from '../../parts/Doors';
import { useApp, type AppState, type Settings } from '../../state/app';
import type { UnitChoice } from '../../engine/answers';
import type { Hand } from '../../state/sea';
import { Shower } from '../../state/shown';
import { useStore } from '../../state/store';

const settingsOf = (state: AppState) => state.settings;
const waterOf = (state: AppState) => state.hand.water;

const UNITS: { value: UnitChoice; name: string }[] = [
  { value: 'feet', name: 'Feet and mph' },
  { value: 'knots', name: 'Feet and knots' },
  { value: 'metric', name: 'Metric' },
];
const LOOKS: { value: Settings['look']; name: string }[] = [
  { value: 'day', name: 'Day' },
  { value: 'night', name: 'Night, dim red' },
];
const WATERS: { value: Hand['water']; name: string }[] = [
  { value: 'salt', name: 'Salt' },
  { value: 'fresh', name: 'Fresh' },
];

interface GroupProps<T extends string> {
  name: string;
  value: T;
  choices: { value: T; name: string }[];
  onChoose(value: T): void;
}

function Group<T extends string>({ name, value, choices, onChoose }: GroupProps<T>) {
  return (
    <div class="row" role="group" aria-label={name}>
      {choices.map((choice) => (
        <button type="button" key={choice.value} class={choice.value === value ? 'button chosen' : 'button'}
          aria-pressed={choice.value === value} onClick={() => onChoose(choice.value)}>{choice.name}</button>
      ))}
    </div>
  );
}

/** The same three figures in any units. */
function sample(shower: Shower): string {
  return [shower.quantity(27.4, 'depth'), shower.quantity(1.2, 'speed'),
    shower.quantity(5.44, 'mass'), shower.quantity(40, 'force')].join(', ');
}

export function Choices() {
  const app = useApp();
  const settings = useStore(app.state, settingsOf);
  const water = useStore(app.state, waterOf);
  return (
    <>
      <section class="settings-part" aria-labelledby="settings-units">
        <h2 id="settings-units">Units</h2>
        <Group name="Units" value={settings.units} choices={UNITS} onChoose={(units) => app.changeSettings({ units })} />
        <p class="soft" aria-live="polite">As in: {sample(new Shower(app.about, settings.units))} of pull.</p>
      </section>
      <section class="settings-part" aria-labelledby="settings-look">
        <h2 id="settings-look">Look</h2>
        <Group name="Look" value={settings.look} choices={LOOKS} onChoose={(look) => app.changeSettings({ look })} />
      </section>
      <section class="settings-part" aria-labelledby="settings-water">
        <h2 id="settings-water">Water</h2>
        <Group name="Water" value={water} choices={WATERS} onChoose={(next) => app.changeHand({ water: next })} />
        <p class="soft">A ball weighs a little more in fresh water, and hangs a little deeper.</p>
      </section>
      <section class="settings-part" aria-labelledby="settings-awake">
        <h2 id="settings-awake">Screen</h2>
        <button type="button" class="button settings-switch" role="switch" aria-checked={settings.keepAwake}
          onClick={() => app.changeSettings({ keepAwake: !settings.keepAwake })}>
          <span>Keep the screen on</span><span class="settings-knob" aria-hidden="true">{settings.keepAwake ? 'On' : 'Off'}</span>
        </button>
        <Doors only={['awake']} />
      </section>
    </>
  );
}
