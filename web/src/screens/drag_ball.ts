// Taking hold of the ball in the drawing: up and down changes its count.
import type { Frame } from '../drawing/frame';
import type { App } from '../state/app';

/** How near the ball a finger must come, px: half a touch target. */
const NEAR = 34;

export function dragBall(svg: SVGSVGElement, app: App, frameOf: () => Frame | undefined,
  onHold: (held: boolean) => void): () => void {
  let from: { y: number; count_m: number; id: number } | undefined;

  const ballNear = (event: PointerEvent): boolean => {
    const ball = svg.querySelector('.selected .ball');
    if (!ball) return false;
    const box = ball.getBoundingClientRect();
    return Math.hypot(
      event.clientX - (box.left + box.right) / 2, event.clientY - (box.top + box.bottom) / 2) < NEAR;
  };
  const down = (event: PointerEvent): void => {
    if (!event.isPrimary || !ballNear(event)) return;
    const { hand } = app.state.get();
    from = { y: event.clientY, count_m: hand.counts_m[hand.rigger] ?? 0, id: event.pointerId };
    svg.setPointerCapture(event.pointerId);
    onHold(true);
  };
  const move = (event: PointerEvent): void => {
    const frame = frameOf();
    if (!from || !frame || event.pointerId !== from.id) return;
    setCount(app, from.count_m + (event.clientY - from.y) / frame.scale);
  };
  const up = (event: PointerEvent): void => {
    if (!from || event.pointerId !== from.id) return;
    from = undefined;
    onHold(false);
    app.changeHand({});
  };
  svg.addEventListener('pointerdown', down);
  svg.addEventListener('pointermove', move);
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  return () => {
    svg.removeEventListener('pointerdown', down);
    svg.removeEventListener('pointermove', move);
    svg.removeEventListener('pointerup', up);
    svg.removeEventListener('pointercancel', up);
  };
}

/** The nearest whole mark of the counter, within the line on the reel. */
function setCount(app: App, count_m: number): void {
  const { hand } = app.state.get();
  const rigger = app.activeRig()?.facts.riggers.find((r) => r.name === hand.rigger);
  if (!rigger) return;
  const { shower } = app;
  const step = shower.units === 'metric' ? 0.5 : 1;
  const marks = Math.round(shower.inUnit(count_m, 'depth') / step) * step;
  const count = Math.min(Math.max(shower.fromUnit(marks, 'depth'), 0), rigger.line_on_reel_m);
  if (count === hand.counts_m[hand.rigger]) return;
  app.changeHand({ counts_m: { ...hand.counts_m, [hand.rigger]: count } });
}
