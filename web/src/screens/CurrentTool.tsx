// The current with depth: points dragged in the drawing, or set on rulers below it.
import { useLayoutEffect, useRef, useState, type MutableRef } from 'preact/hooks';
import { CurrentProfilePainter, type Component } from '../drawing/current_profile';
import type { Frame } from '../drawing/frame';
import type { BoardHold } from '../drawing/SideBoard';
import { Ruler } from '../parts/Ruler';
import { currentScale, depthScale } from '../parts/scales';
import { useApp, type AppState } from '../state/app';
import { addPoint, APART_M, MOST_POINTS, movePoint, removePoint } from '../state/profile';
import { STILL, type CurrentPoint } from '../state/sea';
import { useStore } from '../state/store';
import './current.css';

interface Props {
  board: MutableRef<BoardHold | null>;
}

const handOf = (state: AppState) => state.hand;
const unitsOf = (state: AppState) => state.settings.units;
const DEEPER_M = 18;
const MOST_MPS = 1.5;

export function CurrentTool({ board }: Props) {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const units = useStore(app.state, unitsOf);
  const [chosen, setChosen] = useState(0);
  const [component, setComponent] = useState<Component>('along_mps');
  const painter = useRef<CurrentProfilePainter>();
  const points = hand.current;
  const point = points[Math.min(chosen, points.length - 1)] ?? STILL;
  const put = (current: CurrentPoint[]): void => app.changeHand({ current });
  const latest = useRef({ points, component, chosen });
  latest.current = { points, component, chosen };

  // Painted after each painting of the side view, whose scale it shares.
  const paint = (): void => {
    const frame = board.current?.frame();
    const now = latest.current;
    if (frame) painter.current?.paint(now.points, now.component, now.chosen, frame, app.shower);
  };
  useLayoutEffect(() => {
    const hold = board.current;
    if (!hold) return undefined;
    const mine = new CurrentProfilePainter(hold.svg);
    painter.current = mine;
    const ends = [
      hold.onPaint(paint),
      dragPoints(hold.svg, mine, () => hold.frame(), () => latest.current, setChosen, put),
      () => mine.remove(),
    ];
    return () => { for (const end of ends) end(); };
  }, []);
  useLayoutEffect(paint);

  const index = Math.min(chosen, points.length - 1);
  const side = component === 'along_mps' ? along(point) : across(point);
  return (
    <div class="current-tool">
      <div class="row">
        <div class="row" role="group" aria-label="Point of the profile">
          {points.map((p, i) => (
            <button type="button" key={i} class={i === index ? 'button chosen' : 'button'}
              aria-pressed={i === index} onClick={() => setChosen(i)}>
              {i === 0 ? 'top' : app.shower.number(p.depth_m, 'depth')}</button>
          ))}
        </div>
        <button type="button" class="button" disabled={points.length >= MOST_POINTS}
          onClick={() => { put(addPoint(points, index, DEEPER_M)); setChosen(index + 1); }}>Add</button>
        <button type="button" class="button" disabled={index === 0}
          onClick={() => { put(removePoint(points, index)); setChosen(index - 1); }}>Remove</button>
        <button type="button" class="button plain"
          onClick={() => { put([STILL]); setChosen(0); }}>Still water</button>
      </div>
      <div class="row" role="group" aria-label="Which way">
        {(['along_mps', 'across_mps'] as const).map((which) => (
          <button type="button" key={which} class={which === component ? 'button chosen' : 'button'}
            aria-pressed={which === component} onClick={() => setComponent(which)}>
            {which === 'along_mps' ? 'Along' : 'Across'}</button>
        ))}
        <span class="grow">{side}</span>
      </div>
      <Ruler name={component === 'along_mps' ? 'With me +' : 'Starboard +'} dimension="speed"
        value={point[component]} scale={currentScale(units)}
        onInput={(mps) => put(movePoint(points, index, { ...point, [component]: mps }))} />
      {index > 0 && (
        <Ruler name="At depth" dimension="length" value={point.depth_m}
          scale={depthScale(units, APART_M, app.about.limits.largest_count_m)}
          onInput={(depth_m) => put(movePoint(points, index, { ...point, depth_m }))} />
      )}
    </div>
  );

  function along(p: CurrentPoint): string {
    if (Math.abs(p.along_mps) < 0.01) return 'no current along';
    const speed = app.shower.quantity(Math.abs(p.along_mps), 'speed');
    return `${speed} ${p.along_mps > 0 ? 'with me' : 'against me'}`;
  }
  function across(p: CurrentPoint): string {
    if (Math.abs(p.across_mps) < 0.01) return 'no current across';
    const speed = app.shower.quantity(Math.abs(p.across_mps), 'speed');
    return `${speed} to ${p.across_mps > 0 ? 'starboard' : 'port'}`;
  }
}

function dragPoints(svg: SVGSVGElement, painter: CurrentProfilePainter, frameOf: () => Frame | undefined,
  now: () => { points: CurrentPoint[]; component: Component }, choose: (index: number) => void,
  put: (points: CurrentPoint[]) => void): () => void {
  let held: { index: number; id: number } | undefined;
  const place = (event: PointerEvent): [number, number] => {
    const box = svg.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const down = (event: PointerEvent): void => {
    const frame = frameOf();
    if (!frame || !event.isPrimary) return;
    const { points, component } = now();
    const index = painter.pointAt(frame, points, component, ...place(event));
    if (index < 0) return;
    // The ball below must not take the same finger.
    event.stopImmediatePropagation();
    held = { index, id: event.pointerId };
    svg.setPointerCapture(event.pointerId);
    choose(index);
  };
  const move = (event: PointerEvent): void => {
    const frame = frameOf();
    if (!held || !frame || event.pointerId !== held.id) return;
    const { points, component } = now();
    const before = points[held.index];
    if (!before) return;
    const { depth_m, mps } = painter.valueAt(frame, ...place(event));
    const limited = Math.max(-MOST_MPS, Math.min(MOST_MPS, mps));
    put(movePoint(points, held.index, { ...before, depth_m, [component]: limited }));
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId === held?.id) held = undefined;
  };
  svg.addEventListener('pointerdown', down, { capture: true });
  svg.addEventListener('pointermove', move);
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  return () => {
    svg.removeEventListener('pointerdown', down, { capture: true });
    svg.removeEventListener('pointermove', move);
    svg.removeEventListener('pointerup', up);
    svg.removeEventListener('pointercancel', up);
  };
}
