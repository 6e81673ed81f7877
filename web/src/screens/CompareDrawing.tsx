// Depth of the ball against the count, both to one scale: a line that hung plumb would run down the
// dashed diagonal, and what is above it was lost to the water.
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useApp } from '../state/app';
import type { Row } from './compare_rows';
import { plotOf, rulings, spread } from './compare_plot';

/** Told apart without colour: A is whole, the others dashed, each in a way of its own. */
const DASHES = ['', '9 4', '2 4', '14 4 2 4', '5 3', '14 3 5 3'];
const WIDEST = 760;

function useWidth(): [preact.RefObject<HTMLDivElement>, number] {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return undefined;
    const measure = (): void => setWidth(Math.min(WIDEST, element.clientWidth));
    measure();
    const size = new ResizeObserver(measure);
    size.observe(element);
    return () => size.disconnect();
  }, []);
  return [box, width];
}

export function CompareDrawing({ rows, deepest_m }: { rows: Row[]; deepest_m: number }) {
  const { shower } = useApp();
  const [box, width] = useWidth();
  const plot = plotOf(rows, deepest_m, width);
  const marks = rulings(deepest_m, plot.scale, shower);
  const labels = spread(rows.map(({ curve }) => plot.y(curve.at(-1)?.[1] ?? 0)));
  const unit = shower.unit('depth');
  return (
    <div class="compare-drawing" ref={box}>
      {width > 0 && (
        <svg width={width} height={plot.height} viewBox={`0 0 ${width} ${plot.height}`} role="img"
          aria-label="Depth of the ball against the count, to one scale. The figures stand below.">
          {marks.map(({ at_m, text }) => (
            <g key={at_m} class="ruling">
              <line x1={plot.x(at_m)} x2={plot.x(at_m)} y1={plot.y(0)} y2={plot.bottom} />
              <text x={plot.x(at_m)} y={plot.y(0) - 8} text-anchor="middle">{text}</text>
              {plot.y(at_m) <= plot.bottom && at_m > 0 && (
                <>
                  <line x1={plot.x(0)} x2={plot.right} y1={plot.y(at_m)} y2={plot.y(at_m)} />
                  <text x={plot.x(0) - 6} y={plot.y(at_m) + 5} text-anchor="end">{text}</text>
                </>
              )}
            </g>
          ))}
          <line class="water" x1={plot.x(0)} x2={plot.right} y1={plot.y(0)} y2={plot.y(0)} />
          <text class="axis" x={plot.right} y={14} text-anchor="end">count, {unit}</text>
          <text class="axis" x={plot.x(0) + 6} y={plot.bottom - 6}>depth, {unit}</text>
          <line class="plumb" x1={plot.x(0)} y1={plot.y(0)} x2={plot.plumb[0]} y2={plot.plumb[1]} />
          <text class="plumb-word" text-anchor="end" x={plot.plumb[0] - 22} y={plot.plumb[1] - 8}>plumb</text>
          {rows.map(({ key, curve, letter }, i) => (
            <g key={key} class="curve">
              <path d={pathOf(curve, plot)} stroke-dasharray={DASHES[i % DASHES.length]} />
              <text x={plot.x(curve.at(-1)?.[0] ?? 0) + 6} y={(labels[i] ?? 0) + 6}>{letter}</text>
            </g>
          ))}
        </svg>
      )}
    </div>
  );
}

function pathOf(curve: Row['curve'], plot: ReturnType<typeof plotOf>): string {
  return curve.map(([count, depth], i) =>
    `${i === 0 ? 'M' : 'L'}${plot.x(count).toFixed(1)} ${plot.y(depth).toFixed(1)}`).join('');
}
