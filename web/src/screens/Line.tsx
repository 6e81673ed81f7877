// The first screen: the side view to scale, and count, speed and ball under the finger. While a finger
// drags, only the ruler, the figures and the drawing's own elements change.
import { useEffect, useRef, useState } from 'preact/hooks';
import { SideBoard, type BoardHold } from '../drawing/SideBoard';
import { BallRuler, CountRuler, SpeedRuler } from '../parts/hands';
import { FoldedCautions, Notes } from '../parts/Remarks';
import { RiggerChoice } from '../parts/RiggerChoice';
import { useApp, type App } from '../state/app';
import { Live, type LiveView } from '../state/live';
import { Store, useStore } from '../state/store';
import { BottomTool } from './BottomTool';
import { CurrentTool } from './CurrentTool';
import { LiveFigures } from './LiveFigures';
import { LiveTrouble } from './LiveTrouble';
import './line.css';

type Tool = 'hands' | 'current' | 'bottom';
type Views = Store<LiveView>;

const NOTHING: LiveView = { riggers: [], cautions: [], notes: [], solve_ms: 0 };
const cautionsOf = (view: LiveView) => view.cautions;
const notesOf = (view: LiveView) => view.notes;

/** The live shape of what is in hand, for as long as the screen is open. */
function useLive(app: App): Views {
  const views = useRef<Views>();
  views.current ??= new Store(NOTHING);
  useEffect(() => {
    const shown = views.current;
    const live = new Live(app.desk, (view) => shown?.set(view));
    const follow = (): void => {
      const rig = app.activeRig();
      const { hand, ground, settings } = app.state.get();
      if (rig) live.follow({ rig, hand, ground, units: settings.units });
    };
    follow();
    const ends = [app.state.watch(follow), watchFinger((down) => live.hold(down)), () => live.stop()];
    return () => { for (const end of ends) end(); };
  }, []);
  return views.current;
}

/** Tells when a finger goes down anywhere and when it is lifted; gives back what ends it. */
function watchFinger(tell: (down: boolean) => void): () => void {
  const down = (): void => tell(true);
  const up = (): void => tell(false);
  addEventListener('pointerdown', down, true);
  addEventListener('pointerup', up, true);
  addEventListener('pointercancel', up, true);
  return () => {
    removeEventListener('pointerdown', down, true);
    removeEventListener('pointerup', up, true);
    removeEventListener('pointercancel', up, true);
  };
}

function LiveCautions({ views }: { views: Views }) {
  return <FoldedCautions lines={useStore(views, cautionsOf)} />;
}

function LiveNotes({ views }: { views: Views }) {
  return <Notes lines={useStore(views, notesOf)} />;
}

function ToolButton({ name, tool, now, choose }: {
  name: string; tool: Tool; now: Tool; choose(tool: Tool): void;
}) {
  return (
    <button type="button" class={tool === now ? 'button chosen' : 'button'} aria-pressed={tool === now}
      onClick={() => choose(tool === now ? 'hands' : tool)}>{name}</button>
  );
}

export function Line() {
  const app = useApp();
  const views = useLive(app);
  const board = useRef<BoardHold>(null);
  const [tool, setTool] = useState<Tool>('hands');
  return (
    <section class="line-screen" aria-labelledby="line-title">
      <h1 id="line-title" class="visually-hidden">The line</h1>
      <div class="first">
        <LiveCautions views={views} />
        <div class="answers">
          <RiggerChoice />
          <LiveFigures views={views} />
          <div class="tools">
            <ToolButton name="Current" tool="current" now={tool} choose={setTool} />
            <ToolButton name="Bottom" tool="bottom" now={tool} choose={setTool} />
          </div>
        </div>
        <div class="board">
          <SideBoard views={views} hold={board} />
          <LiveTrouble views={views} />
        </div>
        <div class="hands">
          {tool === 'hands' && <><CountRuler /><SpeedRuler /><BallRuler /></>}
          {tool === 'current' && <CurrentTool board={board} />}
          {tool === 'bottom' && <BottomTool />}
        </div>
      </div>
      <div class="below"><LiveNotes views={views} /></div>
    </section>
  );
}
