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

export function Figure({ name, value, shown, shower, below, size }: Props) {
  return (
    <div class="figure">
      <span class="name">{name}</span>
      <span class="digits" ref={(element) => {
        if (size) element?.style.setProperty('font-size', `${size}px`);
      }}>
        {value ? shower.number(value.median, shown) : '–'}
        <span class="unit">{shower.unit(shown)}</span>
      </span>
      <span class="band">{below ?? (value && shower.ends(value, shown)) ?? ' '}</span>
    </div>
  );
}
