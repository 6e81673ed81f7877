// A dimension as on a drawing board: a thin line between two arrow heads, the figure written on it.
import { make, put, say, show } from './svg';

const HEAD = 7;
const HALF = 2.6;

export class Dimension {
  private readonly line: SVGPathElement;
  private readonly heads: SVGPathElement;
  private readonly text: SVGTextElement;

  constructor(group: SVGGElement) {
    this.line = make(group, 'path', { class: 'dimension' });
    this.heads = make(group, 'path', { class: 'dimension-head' });
    this.text = make(group, 'text', { class: 'dimension-text' });
  }

  remove(): void {
    for (const element of [this.line, this.heads, this.text]) element.remove();
  }

  showIf(visible: boolean): void {
    for (const element of [this.line, this.heads, this.text]) show(element, visible);
  }

  /** \param part where the figure stands: 0 at the top, 1 at the foot. */
  vertical(x: number, top: number, foot: number, words: string, part: number): void {
    const fits = foot - top > 3 * HEAD;
    const [a, b, cx] = [top.toFixed(1), foot.toFixed(1), x.toFixed(1)];
    put(this.line, { d: `M${cx} ${a}V${b}` });
    put(this.heads, {
      d: fits
        ? `M${cx} ${a}l${-HALF} ${HEAD}h${2 * HALF}Z` + `M${cx} ${b}l${-HALF} ${-HEAD}h${2 * HALF}Z`
        : '',
    });
    put(this.text, { x, y: top + (foot - top) * part + 6, 'text-anchor': 'middle' });
    say(this.text, words);
    show(this.text, foot - top > 40);
  }

  horizontal(left: number, right: number, y: number, words: string): void {
    const long = right - left > 3 * HEAD;
    const [a, b, cy] = [left.toFixed(1), right.toFixed(1), y.toFixed(1)];
    put(this.line, { d: long ? `M${a} ${cy}H${b}` : '' });
    put(this.heads, {
      d: long
        ? `M${a} ${cy}l${HEAD} ${-HALF}v${2 * HALF}Z` + `M${b} ${cy}l${-HEAD} ${-HALF}v${2 * HALF}Z`
        : '',
    });
    put(this.text, { x: (left + right) / 2, y: y + 20, 'text-anchor': 'middle' });
    say(this.text, words);
    show(this.text, right - left > 60);
  }
}
