// The person's rigs: a list, and one of them while it is edited.
import { useEffect, useRef, useState } from 'preact/hooks';
import { useApp, type AppState, type GoodRig } from '../state/app';
import { draftsOfBrowser } from '../state/drafts';
import { useStore } from '../state/store';
import { makeMine, newRig } from './rigs/acts';
import { Editor } from './rigs/Editor';
import { ImportSheet } from './rigs/ImportSheet';
import { RigRow } from './rigs/RigRow';
import './rigs/rigs.css';

const rigsOf = (state: AppState) => state.rigs;
const activeOf = (state: AppState) => state.activeRig;

function rigInHistory(): string | undefined {
  const state: unknown = history.state;
  return typeof state === 'object' && state !== null && 'rig' in state && typeof state.rig === 'string'
    ? state.rig : undefined;
}

/** Which rig is edited: a step of the browser's history, so that the back button leads to the list. */
function useOpened() {
  const [opened, setOpened] = useState(rigInHistory);
  useEffect(() => {
    const follow = (): void => setOpened(rigInHistory());
    addEventListener('popstate', follow);
    return () => removeEventListener('popstate', follow);
  }, []);
  const go = (id: string): void => {
    // From one rig to another: back leads to the list all the same.
    if (rigInHistory()) history.replaceState({ rig: id }, '');
    else history.pushState({ rig: id }, '');
    setOpened(id);
    scrollTo(0, 0);
  };
  const close = (): void => {
    if (rigInHistory()) history.back();
    else setOpened(undefined);
  };
  return { opened, go, close };
}

export function Rigs() {
  const app = useApp();
  const rigs = useStore(app.state, rigsOf);
  const active = useStore(app.state, activeOf);
  const drafts = draftsOfBrowser();
  const unfinished = useStore(drafts.list, (list) => list);
  const { opened, go, close } = useOpened();
  const [coming, setComing] = useState(false);
  const before = useRef<string | undefined>(opened);

  useEffect(() => { if (drafts.trouble) app.say(drafts.trouble); }, []);
  // Back in the list the eye finds the rig it came from.
  useEffect(() => {
    if (!opened && before.current) {
      document.querySelector<HTMLElement>(`[data-rig="${CSS.escape(before.current)}"]`)?.focus();
    }
    before.current = opened;
  }, [opened]);

  const attempt = (act: Promise<unknown>): void => {
    setComing(true);
    act.catch((error: unknown) => app.say(`That did not work: ${error instanceof Error ? error.message : String(error)}`))
      .finally(() => setComing(false));
  };
  const mine = (id: string): void => {
    const rig = rigs.find((one) => one.id === id);
    if (rig?.facts) attempt(makeMine(app, rig as GoodRig).then(go));
  };

  if (opened && rigs.some((rig) => rig.id === opened)) {
    return <Editor key={opened} id={opened} onClose={close} onMakeMine={mine} />;
  }
  return (
    <section class="screen rigs" aria-labelledby="rigs-title" aria-busy={coming}>
      <h1 id="rigs-title">Rigs</h1>
      <ul class="rig-list">
        {rigs.map((rig) => (
          <RigRow key={rig.id} rig={rig} inUse={rig.id === active} drafts={drafts} onEdit={go} onMakeMine={mine}
            draft={unfinished.find((draft) => draft.rig === rig.id)} attempt={attempt} />
        ))}
      </ul>
      <div class="row">
        <button type="button" class="button first" onClick={() => attempt(newRig(app).then(go))}>New rig</button>
        <p class="grow soft">It starts from plain gear of the catalogue, to be measured and changed.</p>
      </div>
      <ImportSheet attempt={attempt} />
      <p class="soft">Rigs stay in this browser. Export what you would not lose.</p>
    </section>
  );
}
