// The list of what the phone gives this page, and of what is missing and why. For the screens Speed
// and Settings.
import { useEffect, useState } from 'preact/hooks';
import { doorsOf, type Door, type DoorId } from '../phone/doors';
import { askToKeep, lookAround } from '../phone/look_around';
import { usePhone } from '../phone/start';
import { useApp } from '../state/app';
import './doors.css';

/** The doors now, and again whenever one opens or shuts. */
function useDoors(): { doors: Door[]; again(): void } {
  const app = useApp();
  const phone = usePhone();
  const [doors, setDoors] = useState<Door[]>([]);
  const [turn, setTurn] = useState(0);
  const again = (): void => setTurn((n) => n + 1);
  useEffect(() => {
    let here = true;
    const look = (): void => {
      void lookAround(phone, app.state.get().settings.keepAwake)
        .then((found) => { if (here) setDoors(doorsOf(found)); });
    };
    look();
    const ends = [phone.speed.watch.state.watch(look), phone.wake.state.watch(look),
      watchTilt(look), phone.offline.subscribe(look)];
    return () => { here = false; for (const end of ends) end(); };
  }, [phone, turn]);
  return { doors, again };

  /** Only the state: the level itself changes many times a second. */
  function watchTilt(look: () => void): () => void {
    let before = phone.tilt.state.get().state;
    return phone.tilt.state.watch(() => {
      const { state } = phone.tilt.state.get();
      if (state !== before) look();
      before = state;
    });
  }
}

/** \p only: these doors; all of them when left out. */
export function Doors({ only }: { only?: DoorId[] }) {
  const app = useApp();
  const { doors, again } = useDoors();
  const keep = async (): Promise<void> => {
    if (!(await askToKeep())) app.say('The browser made no promise to keep your rigs. Export them too.');
    again();
  };
  return (
    <dl class="doors">
      {doors.filter(({ id }) => !only || only.includes(id)).map(({ id, name, open, label, words }) => (
        <div key={id} class={`door ${open}`} data-door={id}>
          <dt>{name}<span class="open">{label}</span></dt>
          <dd>
            {words}
            {id === 'storage' && open === 'ask' && (
              <button type="button" class="button" onClick={() => void keep()}>Ask the browser to keep them</button>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}
