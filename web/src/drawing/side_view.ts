// The side view: boat, lines, balls and lures to scale, as the engine found them. Painted straight
// onto SVG elements that stay, since it follows a finger.
import type { Band, RiggerDepth, Shape } from '../engine/answers';
import type { Shower } from '../state/shown';
import { paintBoat } from './boat';
import { Frame, include, type Extent } from './frame';
import { RiggerPicture } from './rigger_picture';
import { make, put, say, show } from './svg';

export interface Pictured {
  name: string;
  depth: RiggerDepth;
  /** The band rests on all the draws, not on a few. */
  fullBand: boolean;
  hasBand: boolean;
}

export interface SideView {
  riggers: Pictured[];
  /** Its name: drawn in ink, with dimensions; the others in faint lines. */
  selected: string;
  bottom_m: number | null;
  /** May the scale change? Not while a finger drags. */
  settle: boolean;
  shower: Shower;
}

/** Room around the drawing, px. */
const INSETS = { left: 44, right: 14, top: 10, bottom: 30 };
const BOW_M = 5.6;
const MARGIN_M = 1.2;
/** The scale is kept while the drawing fills at least this part of its room. Judgement. */
const KEPT_PART = 0.72;

export class SideViewPainter {
  private readonly rulings: SVGGElement;
  private readonly surface: SVGLineElement;
  private readonly bottom: SVGGElement;
  private readonly bottomLine: SVGPathElement;
  private readonly bottomText: SVGTextElement;
  private readonly boat: SVGGElement;
  private readonly layer: SVGGElement;
  private readonly pictures = new Map<string, RiggerPicture>();
  private width = 300;
  private height = 300;
  private extent: Extent | undefined;
  private frameNow: Frame | undefined;
  private ruledFor = '';
  private last: SideView | undefined;

  constructor(private readonly svg: SVGSVGElement) {
    this.rulings = make(svg, 'g', { class: 'rulings' });
    this.surface = make(svg, 'line', { class: 'surface' });
    this.bottom = make(svg, 'g', { class: 'bottom' });
    this.bottomLine = make(this.bottom, 'path');
    this.bottomText = make(this.bottom, 'text', { class: 'dimension-text' });
    this.layer = make(svg, 'g');
    this.boat = make(svg, 'g', { class: 'boat' });
  }

  /** The frame of the last painting, for fingers and overlays. */
  get frame(): Frame | undefined {
    return this.frameNow;
  }

  resize(width: number, height: number): void {
    if (width < 10 || height < 10 || (width === this.width && height === this.height)) return;
    this.width = width;
    this.height = height;
    put(this.svg, { viewBox: `0 0 ${width.toFixed(0)} ${height.toFixed(0)}` });
    if (this.last) this.paint(this.last);
  }

  paint(view: SideView): void {
    this.last = view;
    const frame = this.fit(view);
    this.frameNow = frame;
    this.rule(frame, view.shower);
    put(this.surface, { x1: 0, x2: this.width, y1: frame.y(0), y2: frame.y(0) });
    paintBoat(this.boat, frame);
    this.paintBottom(frame, view);
    this.paintRiggers(frame, view);
  }

  private fit(view: SideView): Frame {
    const needed = extentOf(view);
    if (!this.extent) this.extent = roomy(needed);
    const now = this.extent;
    const outside = needed.aft < now.aft || needed.bottom > now.bottom || needed.top < now.top;
    if (outside) {
      include(now, needed.aft, needed.bottom);
      include(now, needed.ahead, needed.top);
    }
    if (view.settle) {
      const fills = Math.max(
        (needed.bottom - needed.top) / (now.bottom - now.top),
        (needed.ahead - needed.aft) / (now.ahead - now.aft));
      if (outside || fills < KEPT_PART) this.extent = roomy(needed);
    }
    return new Frame({ ...this.extent }, this.width, this.height, INSETS);
  }

  /** Rulings at round depths, numbered at the edge: they state the scale. */
  private rule(frame: Frame, shower: Shower): void {
    const key = `${frame.scale.toFixed(4)} ${this.width} ${this.height} ${shower.units}`;
    if (key === this.ruledFor) return;
    this.ruledFor = key;
    this.rulings.replaceChildren();
    const step = roundStep(46 / frame.scale / shower.rule('depth').si);
    const deepest = frame.depthAt(this.height);
    for (let i = 0; ; i += 1) {
      const depth = shower.fromUnit(i * step, 'depth');
      if (depth > deepest - 8 / frame.scale) break;
      const y = frame.y(depth);
      if (i > 0) make(this.rulings, 'line', { x1: 38, x2: this.width, y1: y, y2: y });
      say(make(this.rulings, 'text', { x: 34, y: i === 0 ? y - 5 : y + 5, 'text-anchor': 'end' }),
        i === 0 ? shower.unit('depth') : String(Number((i * step).toFixed(3))));
    }
  }

  private paintBottom(frame: Frame, view: SideView): void {
    const known = view.bottom_m !== null;
    show(this.bottom, known);
    if (view.bottom_m === null) return;
    const y = frame.y(view.bottom_m);
    let hatch = `M0 ${y.toFixed(1)}H${this.width}`;
    for (let x = 6; x < this.width; x += 14) hatch += `M${x} ${y.toFixed(1)}l-7 9`;
    put(this.bottomLine, { d: hatch });
    // In the ground and to the left: the counts stand to the right, above the bottom and below it.
    put(this.bottomText, { x: INSETS.left, y: y + 27 });
    say(this.bottomText, `bottom ${view.shower.quantity(view.bottom_m, 'depth')}`);
  }

  private paintRiggers(frame: Frame, view: SideView): void {
    const wanted = new Set(view.riggers.map((rigger) => rigger.name));
    for (const [name, picture] of this.pictures) {
      if (!wanted.has(name)) {
        picture.remove();
        this.pictures.delete(name);
      }
    }
    for (const rigger of view.riggers) {
      let picture = this.pictures.get(rigger.name);
      if (!picture) {
        picture = new RiggerPicture(this.layer);
        this.pictures.set(rigger.name, picture);
      }
      const selected = rigger.name === view.selected;
      if (selected) picture.toFront();
      picture.paint(rigger, frame, selected, view.riggers.length > 1, view.shower);
    }
  }
}

/** Everything that has to be on the sheet. */
function extentOf(view: SideView): Extent {
  const extent: Extent = { aft: -3, ahead: BOW_M, top: -2, bottom: 6 };
  for (const { depth, name } of view.riggers) {
    if (depth.shape) includeShape(extent, depth.shape);
    if (name === view.selected) {
      include(extent, 0, depth.count_m);
      include(extent, 0, depth.ball.depth_m.high);
    }
  }
  if (view.bottom_m !== null) include(extent, 0, view.bottom_m);
  return { ...extent, aft: extent.aft - MARGIN_M, top: extent.top - 0.4,
    bottom: extent.bottom + MARGIN_M };
}

function includeShape(extent: Extent, shape: Shape): void {
  include(extent, shape.ball[0], shape.ball[2]);
  for (const clip of shape.clips) {
    include(extent, clip.lure[0], clip.lure[2]);
    include(extent, clip.rod_tip[0], clip.rod_tip[2]);
  }
}

/** A little more than needed, so that the next touch does not burst it. */
function roomy(needed: Extent): Extent {
  return { ...needed, aft: needed.aft * 1.06, bottom: needed.bottom * 1.08 };
}

/** The least of 1, 2, 5, 10, 20, 50, ... that is not less. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].find((digit) => digit * power >= least * 0.999) ?? 10;
  return step * power;
}

export function bandIsWide(band: Band): boolean {
  return band.high - band.low > 1e-6;
}
