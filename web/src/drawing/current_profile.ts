// The current against depth, drawn over the side view on the same scale of depth: to the right it
// runs the boat's way, to the left against it.
import type { CurrentPoint } from '../state/sea';
import type { Shower } from '../state/shown';
import type { Frame } from './frame';
import { make, put, say } from './svg';

/** Of one metre a second, px. */
const PX_PER_MPS = 120;
const GRIP = 28;
const DOT = 9;

export type Component = 'along_mps' | 'across_mps';

export class CurrentProfilePainter {
  private readonly group: SVGGElement;
  private readonly area: SVGPathElement;
  private readonly axis: SVGPathElement;
  private readonly against: SVGTextElement;
  private readonly withMe: SVGTextElement;
  private readonly points: SVGGElement;

  constructor(svg: SVGSVGElement) {
    this.group = make(svg, 'g', { class: 'current-profile' });
    this.area = make(this.group, 'path', { class: 'area' });
    this.axis = make(this.group, 'path', { class: 'axis' });
    this.against = make(this.group, 'text', { 'text-anchor': 'end' });
    this.withMe = make(this.group, 'text', { 'text-anchor': 'start' });
    this.points = make(this.group, 'g');
  }

  remove(): void {
    this.group.remove();
  }

  private axisX(frame: Frame): number {
    return frame.width * 0.5;
  }

  paint(points: CurrentPoint[], component: Component, chosen: number, frame: Frame, shower: Shower): void {
    const x0 = this.axisX(frame);
    const x = (point: CurrentPoint): number => x0 + point[component] * PX_PER_MPS;
    const foot = frame.height - 8;
    const first = points[0];
    const last = points[points.length - 1];
    if (!first || !last) return;
    const along = points.map((p) => `L${x(p).toFixed(1)} ${frame.y(p.depth_m).toFixed(1)}`).join('');
    put(this.area, {
      d: `M${x0} ${frame.y(0).toFixed(1)}L${x(first).toFixed(1)} ${frame.y(0).toFixed(1)}${along}` +
        `L${x(last).toFixed(1)} ${foot}L${x0} ${foot}Z`,
    });
    put(this.axis, { d: `M${x0} ${frame.y(0).toFixed(1)}V${foot}` });
    const [left, right] = component === 'along_mps' ? ['against me', 'with me'] : ['to port', 'to starboard'];
    put(this.against, { x: x0 - 8, y: frame.y(0) - 8 });
    put(this.withMe, { x: x0 + 8, y: frame.y(0) - 8 });
    say(this.against, `← ${left}`);
    say(this.withMe, `${right} →`);
    this.paintPoints(points, component, chosen, frame, shower, x);
  }

  private paintPoints(points: CurrentPoint[], component: Component, chosen: number, frame: Frame,
    shower: Shower, x: (point: CurrentPoint) => number): void {
    while (this.points.childElementCount > points.length) this.points.lastElementChild?.remove();
    while (this.points.childElementCount < points.length) {
      const grip = make(this.points, 'g');
      make(grip, 'circle', { class: 'grip', r: GRIP });
      make(grip, 'circle', { class: 'dot', r: DOT });
      make(grip, 'text', { x: DOT + 6, y: 5 });
    }
    points.forEach((point, i) => {
      const grip = this.points.children[i];
      if (!grip) return;
      put(grip, {
        transform: `translate(${x(point).toFixed(1)} ${frame.y(point.depth_m).toFixed(1)})`,
        class: i === chosen ? 'point chosen' : 'point',
        'data-point': String(i),
      });
      const text = grip.lastElementChild;
      if (text) say(text, shower.number(Math.abs(point[component]), 'speed'));
    });
  }

  /** Which point a finger took, none: -1. */
  pointAt(frame: Frame, points: CurrentPoint[], component: Component, x: number, y: number): number {
    let best = -1;
    let nearest = GRIP + 6;
    points.forEach((point, i) => {
      const distance = Math.hypot(
        x - this.axisX(frame) - point[component] * PX_PER_MPS, y - frame.y(point.depth_m));
      if (distance < nearest) [best, nearest] = [i, distance];
    });
    return best;
  }

  /** What a place on the paper means. */
  valueAt(frame: Frame, x: number, y: number): { depth_m: number; mps: number } {
    return { depth_m: frame.depthAt(y), mps: (x - this.axisX(frame)) / PX_PER_MPS };
  }
}
