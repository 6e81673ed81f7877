// The boat, an invented 18 ft, with its motor: to scale, like everything else.
import type { Frame } from './frame';
import { make, put } from './svg';

type Outline = [ahead_m: number, depth_m: number][];

const HULL: Outline = [
  [0, -0.75], [0, 0.22], [3.6, 0.3], [4.7, 0.1], [5.5, -1.0], [4.2, -0.92], [2.4, -0.8],
];
const MOTOR: Outline = [
  [-0.05, -1.15], [-0.55, -1.1], [-0.6, -0.62], [-0.42, -0.5], [-0.45, 0.35], [-0.62, 0.5],
  [-0.2, 0.5], [-0.16, -0.45], [-0.02, -0.6],
];
const SCREEN: Outline = [[2.3, -0.82], [2.75, -1.35], [3.3, -1.35], [3.5, -0.88]];

function pathOf(outline: Outline, frame: Frame, closed: boolean): string {
  const text = outline.map(([x, depth], i) =>
    `${i === 0 ? 'M' : 'L'}${frame.x(x).toFixed(1)} ${frame.y(depth).toFixed(1)}`).join('');
  return closed ? `${text}Z` : text;
}

export function paintBoat(group: SVGGElement, frame: Frame): void {
  if (!group.firstChild) {
    make(group, 'path', { class: 'solid' });
    make(group, 'path', { class: 'solid' });
    make(group, 'path', { class: 'open' });
  }
  const [hull, motor, screen] = [...group.children];
  if (hull) put(hull, { d: pathOf(HULL, frame, true) });
  if (motor) put(motor, { d: pathOf(MOTOR, frame, true) });
  if (screen) put(screen, { d: pathOf(SCREEN, frame, false) });
}
