// The side view on the first screen: painted at every new view, straight onto its elements.
import type { MutableRef } from 'preact/hooks';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { dragBall } from '../screens/drag_ball';
import { useApp, type App } from '../state/app';
import { FULL, type LiveView } from '../state/live';
import type { Store } from '../state/store';
import type { Frame } from './frame';
import { SideViewPainter } from './side_view';

/** What a tool needs that draws on the same paper. */
export interface BoardHold {
  svg: SVGSVGElement;
  frame(): Frame | undefined;
  /** Called after every painting; gives back what ends it. */
  onPaint(watcher: () => void): () => void;
}

interface Props {
  views: Store<LiveView>;
  hold: MutableRef<BoardHold | null>;
}

export function SideBoard({ views, hold }: Props) {
  const app = useApp();
  const svg = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => (svg.current ? startBoard(svg.current, app, views, hold) : undefined), []);
  return <svg class="side" ref={svg} role="img" aria-label="Side view to scale" />;
}

function startBoard(svg: SVGSVGElement, app: App, views: Store<LiveView>,
  hold: MutableRef<BoardHold | null>): () => void {
  const painter = new SideViewPainter(svg);
  const watchers = new Set<() => void>();
  let held = false;
  const paint = (): void => {
    paintView(painter, svg, app, views.get(), held);
    for (const watcher of watchers) watcher();
  };
  hold.current = {
    svg,
    frame: () => painter.frame,
    onPaint(watcher) {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
  };
  const size = new ResizeObserver(() => {
    painter.resize(svg.clientWidth, svg.clientHeight);
    paint();
  });
  size.observe(svg);
  painter.resize(svg.clientWidth, svg.clientHeight);
  const ends = [
    views.watch(paint),
    watchDrawn(app, paint),
    dragBall(svg, app, () => painter.frame, (holding) => { held = holding; }),
    () => size.disconnect(),
  ];
  paint();
  return () => {
    for (const end of ends) end();
    hold.current = null;
    svg.replaceChildren();
  };
}

/** Paints when something changes that is drawn but not asked of the engine. */
function watchDrawn(app: App, paint: () => void): () => void {
  const drawn = (): string => {
    const { hand, settings } = app.state.get();
    return `${hand.rigger} ${hand.bottom_m} ${settings.units}`;
  };
  let last = drawn();
  return app.state.watch(() => {
    const now = drawn();
    if (now === last) return;
    last = now;
    paint();
  });
}

function paintView(
  painter: SideViewPainter, svg: SVGSVGElement, app: App, view: LiveView, held: boolean): void {
  const { hand } = app.state.get();
  const riggers = view.riggers.flatMap(({ name, depth, draws }) =>
    depth ? [{ name, depth, hasBand: draws > 0, fullBand: draws >= FULL }] : []);
  const rested = view.riggers.every((rigger) => rigger.draws >= FULL || rigger.problem);
  painter.paint({ riggers, selected: hand.rigger, bottom_m: hand.bottom_m,
    settle: rested && !held, shower: app.shower });
  // Words for those who do not see it: when it rests, not at every move.
  if (rested) svg.setAttribute('aria-label', wordsFor(view, app));
}

function wordsFor(view: LiveView, app: App): string {
  const { shower } = app;
  const { rigger } = app.state.get().hand;
  const depth = view.riggers.find(({ name }) => name === rigger)?.depth;
  if (!depth) return 'Side view to scale. Nothing could be worked out yet.';
  const lure = depth.lures[0];
  return `Side view to scale. Ball ${shower.band(depth.ball.depth_m, 'depth')} down, ` +
    `${shower.quantity(depth.ball.trail_m.median, 'depth')} aft of the boom.` +
    (lure ? ` Lure ${shower.band(lure.depth_m, 'depth')} down.` : '');
}
