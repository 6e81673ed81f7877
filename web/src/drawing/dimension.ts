// Dimensions as on a drawing board: thin lines between arrow heads, the figures written on them. All of
// one rigger share two paths: the fewer elements change, the sooner a frame is drawn.
import { make, place, put, say, show } from './svg';

const HEAD = 7;
const HALF = 2.6;

export class Dimensions {
  private readonly line: SVGPathElement;
  private readonly heads: SVGPathElement;
  private readonly texts: SVGTextElement[] = [];
  private lines = '';
  private tips = '';
  private written = 0;

  constructor(private readonly group: SVGGElement) {
    this.line = make(group, 'path', { class: 'dimension' });
    this.heads = make(group, 'path', { class: 'dimension-head' });
  }

  /** \param part where the figure stands: 0 at the top, 1 at the foot. */
  vertical(x: number, top: number, foot: number, words: string, part: number): void {
    const [a, b, cx] = [top.toFixed(1), foot.toFixed(1), x.toFixed(1)];
    this.lines += `M${cx} ${a}V${b}`;
    if (foot - top > 3 * HEAD) {
      this.tips += `M${cx} ${a}l${-HALF} ${HEAD}h${2 * HALF}Z` +
        `M${cx} ${b}l${-HALF} ${-HEAD}h${2 * HALF}Z`;
    }
    if (foot - top > 40) this.write(x, top + (foot - top) * part + 6, words);
  }

  horizontal(left: number, right: number, y: number, words: string): void {
    const [a, b, cy] = [left.toFixed(1), right.toFixed(1), y.toFixed(1)];
    if (right - left > 3 * HEAD) {
      this.lines += `M${a} ${cy}H${b}`;
      this.tips += `M${a} ${cy}l${HEAD} ${-HALF}v${2 * HALF}Z` +
        `M${b} ${cy}l${-HEAD} ${-HALF}v${2 * HALF}Z`;
    }
    if (right - left > 60) this.write((left + right) / 2, y + 20, words);
  }

  /** Draws what was told since the last time, and nothing else. */
  draw(): void {
    put(this.line, { d: this.lines });
    put(this.heads, { d: this.tips });
    this.texts.forEach((text, i) => show(text, i < this.written));
    this.lines = '';
    this.tips = '';
    this.written = 0;
  }

  private write(x: number, y: number, words: string): void {
    const text = this.texts[this.written] ??
      make(this.group, 'text', { class: 'dimension-text', 'text-anchor': 'middle' });
    this.texts[this.written] = text;
    this.written += 1;
    place(text, x, y);
    say(text, words);
  }
}
