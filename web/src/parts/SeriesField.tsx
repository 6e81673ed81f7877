// Evenly spaced values: from, to and by, each typed with or without its unit. The engine reads them.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Shown } from '../engine/answers';
import { useApp } from '../state/app';
import { echo } from '../state/echo';
import { MOST_VALUES, seriesOf, valuesOf, type Series } from '../state/series';
import { useQuantity, type Asked } from './quantity';
import './series_field.css';

interface Props {
  /** "Counts" */
  name: string;
  /** The values in use, SI. */
  values: readonly number[];
  shown: Shown;
  dimension: Asked['dimension'];
  /** Of each value, SI. */
  low: number;
  high: number;
  onSet(values: number[]): void;
  /** Back to the engine's own choice; none while that is in use. */
  onUsual?: (() => void) | undefined;
}

const PARTS = ['from', 'to', 'by'] as const;
const LABELS = { from: 'From', to: 'To', by: 'By' };

export function SeriesField(props: Props) {
  const { name, values, shown, dimension, low, high } = props;
  const { shower } = useApp();
  const [leadsNowhere, setLeadsNowhere] = useState(false);
  const inputs = {
    from: useRef<HTMLInputElement>(null), to: useRef<HTMLInputElement>(null),
    by: useRef<HTMLInputElement>(null),
  };
  const subject = name.toLowerCase();
  const asked = { dimension, low, high, unit: shower.unit(shown) };
  const quantities = {
    from: useQuantity({ ...asked, subject: `the first of the ${subject}` }),
    to: useQuantity({ ...asked, subject: `the last of the ${subject}` }),
    by: useQuantity({ ...asked, low: 0, subject: `the step of the ${subject}` }),
  };
  const series = seriesOf(values);

  // What is in use, except where a finger is.
  useEffect(() => {
    if (!series) return;
    for (const part of PARTS) {
      const input = inputs[part].current;
      if (input && input !== document.activeElement) input.value = echo(shower, series[part], shown);
    }
  }, [series?.from, series?.to, series?.by, shower.units]);

  const take = async (): Promise<void> => {
    const read = await Promise.all(
      PARTS.map((part) => quantities[part].read(inputs[part].current?.value ?? '')));
    const [from, to, by] = read;
    if (from === undefined || to === undefined || by === undefined) return;
    const typed: Series = { from, to, by };
    const wanted = valuesOf(typed);
    setLeadsNowhere(wanted === undefined);
    if (wanted) props.onSet(wanted);
  };
  const usual = (): void => {
    inputs.from.current?.focus();
    setLeadsNowhere(false);
    props.onUsual?.();
  };

  const troubles = PARTS.flatMap((part) => quantities[part].trouble ?? []);
  if (leadsNowhere && troubles.length === 0) {
    troubles.push(`These do not lead from the first value up to the last in 1 to ${MOST_VALUES} steps. ` +
      'Give a last value that is larger, and a step above 0.');
  }
  return (
    <fieldset class="series-field">
      <legend>{name}</legend>
      <div class="series-parts">
        {PARTS.map((part) => (
          <label key={part} class="field">
            <span class="name">{LABELS[part]}</span>
            <input ref={inputs[part]} autocomplete="off"
              aria-invalid={quantities[part].trouble !== undefined || leadsNowhere}
              onChange={() => void take()} />
          </label>
        ))}
      </div>
      {props.onUsual && (
        <button type="button" class="button" onClick={usual}>The usual {subject} again</button>
      )}
      <p class="wrong" role="alert">{troubles.join(' ')}</p>
    </fieldset>
  );
}
