// The start of the page: the engine first, then what was kept, then the screens. If the engine cannot
// start, words say so.
import { render } from 'preact';
import oneRigger from '../../examples/rigs/one-rigger.toml?raw';
import twoRiggers from '../../examples/rigs/two-riggers.toml?raw';
import { App } from './App';
import { Desk, EngineCannotStart } from './engine/desk';
import { startPhone } from './phone/start';
import { App as AppModel } from './state/app';
import { followOtherWindows } from './state/other_windows';
import { Storage } from './state/storage';
import './look/page.css';

const root = document.getElementById('page');

function tell(words: string): void {
  if (!root) return;
  render(
    <div class="words" role="alert">
      <h1>Offplumb cannot work here</h1>
      <p>{words}</p>
      <p>Nothing that you kept on this page is lost.</p>
    </div>, root);
  document.documentElement.dataset.engine = 'failed';
}

async function start(): Promise<void> {
  if (!root) return;
  try {
    const desk = await Desk.open();
    const app = await AppModel.open(desk, Storage.ofBrowser(), [oneRigger, twoRiggers]);
    if (app.storage.trouble) app.say(app.storage.trouble);
    startPhone(app);
    followOtherWindows(app);
    root.replaceChildren();
    render(<App app={app} />, root);
    document.documentElement.dataset.engine = 'ready';
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    tell(error instanceof EngineCannotStart ? words
      : `The page did not start (${words}). Load it again; if that does not help, please report this.`);
  }
}

void start();
