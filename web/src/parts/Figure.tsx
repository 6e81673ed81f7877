// The largest thing on a screen: a figure to act on, with its band in words.
import type { Band, Shown } from '../engine/answers';
import type { Shower } from '../state/shown';

interface Props {
  name: string;
  value: Band | null | undefined;
  shown: Shown;
  shower: Shower;
  /** Instead of the band's words. */
  below?: string | undefined;
  size?: number;
}

interface Box {
  name: string;
  unit: string;
  number?: string;
  band?: string;
  size?: number | undefined;
}

/** The box alone; without its words they are written straight onto `.number` and `.band`. */
export function FigureBox({ name, unit, number, band, size }: Box) {
  return (
    <div class="figure">
      <span class="name">{name}</span>
      <span class="digits" ref={(element) => {
        if (size) element?.style.setProperty('font-size', `${size}px`);
      }}>
        <span class="number">{number}</span><span class="unit">{unit}</span>
      </span>
      <span class="band">{band}</span>
    </div>
  );
}

/** What a figure says: its number, and its band in words. */
export function wordsOf(
  value: Band | null | undefined, shown: Shown, shower: Shower): { number: string; band: string } {
  return {
    number: value ? shower.number(value.median, shown) : '–',
    band: (value && shower.ends(value, shown)) ?? ' ',
  };
}

export function Figure({ name, value, shown, shower, below, size }: Props) {
  const { number, band } = wordsOf(value, shown, shower);
  return <FigureBox name={name} unit={shower.unit(shown)} number={number} band={below ?? band} size={size} />;
}
