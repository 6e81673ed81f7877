// One rigger in the side view: its lines, ball, clips and tackle, bands and dimensions.
import type { Point, RiggerDepth, Shape } from '../engine/answers';
import type { Shower } from '../state/shown';
import { Dimensions } from './dimension';
import type { Frame } from './frame';
import type { Pictured } from './side_view';
import { make, place, put, say, show } from './svg';

/** Sizes on the paper, px: to scale they could not be seen. */
const BALL = 8;
const LURE = 5;
const CLIP = 3.5;

class ClipPicture {
  private readonly lines: SVGPathElement;
  private readonly rod: SVGPathElement;
  private readonly tackle: SVGPathElement;
  private readonly clip: SVGCircleElement;
  private readonly band: SVGRectElement;

  constructor(group: SVGGElement, bands: SVGGElement) {
    this.band = make(bands, 'rect', { class: 'band-bar' });
    this.lines = make(group, 'path', { class: 'thread' });
    this.rod = make(group, 'path', { class: 'rod' });
    this.tackle = make(group, 'path', { class: 'thing' });
    this.clip = make(group, 'circle', { class: 'clip', r: CLIP });
  }

  remove(): void {
    for (const element of [this.band, this.lines, this.rod, this.tackle, this.clip]) element.remove();
  }

  paint(shape: Shape['clips'][number], picture: Pictured, index: number, frame: Frame,
    selected: boolean, shower: Shower, dimensions: Dimensions): void {
    put(this.lines, {
      d: frame.path(shape.fishing_line) + frame.path(shape.setback) + frame.path(shape.leader),
    });
    const [rodX, , rodDepth] = shape.rod_tip;
    put(this.rod, { d: rodPath(frame, rodX, rodDepth) });
    place(this.clip, frame.x(shape.clip[0]), frame.y(shape.clip[2]));
    put(this.tackle, {
      d: (shape.flasher ? blade(frame, shape.flasher) : '') + almond(frame, shape.lure),
    });
    const lure = picture.depth.lures[index];
    const x = frame.x(shape.lure[0]);
    paintBand(this.band, x, lure?.depth_m, picture, frame, selected);
    if (selected && lure) {
      dimensions.vertical(x, frame.y(0), frame.y(shape.lure[2]) - LURE,
        shower.quantity(lure.depth_m.median, 'depth'), index === 0 ? 0.3 : 0.14);
    }
  }
}

export class RiggerPicture {
  private readonly group: SVGGElement;
  private readonly bands: SVGGElement;
  private readonly band: SVGRectElement;
  private readonly plumb: SVGPathElement;
  private readonly plumbText: SVGTextElement;
  private readonly main: SVGPathElement;
  private readonly boom: SVGPathElement;
  private readonly ball: SVGCircleElement;
  private readonly name: SVGTextElement;
  private readonly dimensions: Dimensions;
  private clips: ClipPicture[] = [];

  constructor(private readonly layer: SVGGElement) {
    this.group = make(layer, 'g', { class: 'rigger' });
    this.bands = make(this.group, 'g');
    this.band = make(this.bands, 'rect', { class: 'band-bar' });
    this.plumb = make(this.group, 'path', { class: 'plumb' });
    this.main = make(this.group, 'path', { class: 'main-line' });
    this.boom = make(this.group, 'path', { class: 'boom' });
    this.ball = make(this.group, 'circle', { class: 'ball', r: BALL });
    this.dimensions = new Dimensions(this.group);
    this.plumbText = make(this.group, 'text', { class: 'plumb-text' });
    this.name = make(this.group, 'text', { class: 'rigger-name', 'text-anchor': 'middle' });
  }

  remove(): void {
    this.group.remove();
  }

  toFront(): void {
    if (this.layer.lastChild !== this.group) this.layer.append(this.group);
  }

  paint(picture: Pictured, frame: Frame, selected: boolean, oneOfSeveral: boolean, shower: Shower): void {
    const { shape } = picture.depth;
    show(this.group, shape !== undefined);
    if (!shape) return;
    put(this.group, { class: selected ? 'rigger selected' : 'rigger' });
    put(this.main, { d: frame.path(shape.main_line) });
    const [tipX, , tipDepth] = shape.boom_tip;
    put(this.boom, {
      d: `M${frame.x(0.3).toFixed(1)} ${frame.y(-0.8).toFixed(1)}L${frame.x(tipX).toFixed(1)} ${frame.y(tipDepth).toFixed(1)}`,
    });
    const x = frame.x(shape.ball[0]);
    const y = frame.y(shape.ball[2]);
    place(this.ball, x, y);
    show(this.name, oneOfSeveral);
    place(this.name, x, y + BALL + (selected ? 34 : 16));
    say(this.name, picture.name);
    paintBand(this.band, x, picture.depth.ball.depth_m, picture, frame, selected);
    this.paintClips(picture, shape, frame, selected, shower);
    this.paintDimensions(picture.depth, shape, frame, selected, shower);
    this.dimensions.draw();
  }

  private paintClips(picture: Pictured, shape: Shape, frame: Frame, selected: boolean,
    shower: Shower): void {
    while (this.clips.length > shape.clips.length) this.clips.pop()?.remove();
    while (this.clips.length < shape.clips.length) {
      this.clips.push(new ClipPicture(this.group, this.bands));
    }
    shape.clips.forEach((clip, i) =>
      this.clips[i]?.paint(clip, picture, i, frame, selected, shower, this.dimensions));
  }

  /** How deep, how far aft, and where the counter says it is. */
  private paintDimensions(depth: RiggerDepth, shape: Shape, frame: Frame, selected: boolean,
    shower: Shower): void {
    for (const part of [this.plumb, this.plumbText]) show(part, selected);
    if (!selected) return;
    const x = frame.x(shape.ball[0]);
    const y = frame.y(shape.ball[2]);
    const plumbX = frame.x(shape.boom_tip[0]);
    const plumbY = frame.y(depth.count_m);
    put(this.plumb, {
      d: `M${plumbX.toFixed(1)} ${frame.y(shape.boom_tip[2]).toFixed(1)}V${plumbY.toFixed(1)}` +
        `m-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0`,
    });
    const countWords = `count ${shower.number(depth.count_m, 'depth')}`;
    const nearEdge = plumbX + 50 > frame.width;
    place(this.plumbText, nearEdge ? frame.width - 8 : plumbX, plumbY + 22);
    put(this.plumbText, { 'text-anchor': nearEdge ? 'end' : 'middle' });
    say(this.plumbText, countWords);
    this.dimensions.vertical(x, frame.y(0), y - BALL,
      shower.quantity(depth.ball.depth_m.median, 'depth'), 0.55);
    this.dimensions.horizontal(x + BALL, plumbX, y, `${shower.quantity(depth.ball.trail_m.median, 'depth')} aft`);
  }
}

function paintBand(bar: SVGRectElement, x: number,
  band: { low: number; high: number } | undefined, picture: Pictured, frame: Frame,
  selected: boolean): void {
  show(bar, picture.hasBand && selected && band !== undefined);
  if (!band) return;
  const top = frame.y(band.low);
  put(bar, { x: x - 12, y: top, width: 24, height: Math.max(2, frame.y(band.high) - top),
    class: picture.fullBand ? 'band-bar' : 'band-bar rough' });
}

function rodPath(frame: Frame, x: number, depth: number): string {
  const [x0, y0] = [frame.x(x > 1.5 ? x - 2.0 : 0.6), frame.y(-0.85)];
  const [x1, y1] = [frame.x(x), frame.y(depth)];
  return `M${x0.toFixed(1)} ${y0.toFixed(1)}Q${x0.toFixed(1)} ${y1.toFixed(1)} ${x1.toFixed(1)} ${y1.toFixed(1)}`;
}

function almond(frame: Frame, [x, , depth]: Point): string {
  return `M${(frame.x(x) - LURE).toFixed(1)} ${frame.y(depth).toFixed(1)}q${LURE} -5 ${2 * LURE} 0q${-LURE} 5 ${-2 * LURE} 0Z`;
}

function blade(frame: Frame, [x, , depth]: Point): string {
  return `M${(frame.x(x) - 5).toFixed(1)} ${(frame.y(depth) + 4).toFixed(1)}l7 -10l4 2l-7 10Z`;
}
