// A scale that slides under a fixed mark: dragged, stepped by keys, or typed.
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { put, say } from '../drawing/svg';
import type { Shown } from '../engine/answers';
import { useApp } from '../state/app';
import { useQuantity, type Asked } from './quantity';
import './ruler.css';

export interface Scale {
  shown: Shown;
  /** All in the shown unit. */
  min: number;
  max: number;
  step: number;
  /** A number is written at every so many. */
  label: number;
  /** A small tick at every so many. */
  tick: number;
  pxPerUnit: number;
}

/** A value that is shown as it changes, past the drawing of components: it follows a finger. */
export interface Followed {
  get(): number;
  /** Called after every change; gives back what ends it. */
  watch(watcher: () => void): () => void;
}

interface Props {
  name: string;
  /** SI. */
  value: number | Followed;
  scale: Scale;
  onInput(si: number): void;
  /** When the finger is lifted or the value was typed. */
  onCommit?(): void;
  dimension: Asked['dimension'];
  /** Something else sets the value: say what. */
  setBy?: string | undefined;
}

const LARGE = 22;
const SMALL = 12;

function nearStep(value: number, scale: Scale): number {
  const stepped = Math.round(value / scale.step) * scale.step;
  return Math.min(scale.max, Math.max(scale.min, stepped));
}

function Tape({ scale }: { scale: Scale }) {
  const ticks = [];
  const first = Math.ceil(scale.min / scale.tick - 1e-9);
  const last = Math.floor(scale.max / scale.tick + 1e-9);
  const perLabel = Math.round(scale.label / scale.tick);
  for (let i = first; i <= last; i += 1) {
    const large = i % perLabel === 0;
    const x = i * scale.tick * scale.pxPerUnit;
    ticks.push(<line key={i} class={large ? 'tick large' : 'tick'} x1={x} x2={x} y1={0}
      y2={large ? LARGE : SMALL} />);
    if (large) {
      ticks.push(<text key={`n${i}`} x={x} y={LARGE + 18}>{Number((i * scale.tick).toFixed(6))}</text>);
    }
  }
  return <>{ticks}</>;
}

export function Ruler(props: Props) {
  const { name, scale } = props;
  const { shower } = useApp();
  const strip = useRef<SVGSVGElement>(null);
  const tape = useRef<HTMLDivElement>(null);
  const digits = useRef<HTMLSpanElement>(null);
  const [typing, setTyping] = useState(false);
  const si = (): number => (typeof props.value === 'number' ? props.value : props.value.get());
  const current = useRef(0);
  const latest = useRef(props);
  latest.current = props;

  const show = (): void => {
    const value = shower.inUnit(si(), scale.shown);
    current.current = value;
    strip.current?.style.setProperty('transform', `translateX(${-value * scale.pxPerUnit}px)`);
    if (digits.current) say(digits.current, shower.number(si(), scale.shown));
    if (tape.current) {
      put(tape.current, { 'aria-valuenow': String(Number(value.toFixed(4))),
        'aria-valuetext': shower.quantity(si(), scale.shown) });
    }
  };
  // After every drawing, and in between when the value is one that is followed.
  useLayoutEffect(show);
  const showNow = useRef(show);
  showNow.current = show;
  const followed = typeof props.value === 'number' ? undefined : props.value;
  useEffect(() => followed?.watch(() => showNow.current()), [followed]);

  const take = (next: number): void => {
    const stepped = nearStep(next, latest.current.scale);
    if (Math.abs(stepped - current.current) < 1e-9) return;
    current.current = stepped;
    latest.current.onInput(shower.fromUnit(stepped, scale.shown));
  };

  useEffect(() => dragTape(tape.current, () => current.current, () => latest.current, take),
    [typing, scale.pxPerUnit]);

  const keys = (event: KeyboardEvent): void => {
    const to = keyed(event.key, current.current, scale);
    if (to === undefined || props.setBy) return;
    event.preventDefault();
    take(to);
    props.onCommit?.();
  };

  const ticks = useMemo(() => <Tape scale={scale} />,
    [scale.min, scale.max, scale.step, scale.pxPerUnit, scale.shown]);
  if (typing) {
    return <Typing {...props} initial={shower.number(si(), scale.shown)}
      onDone={() => setTyping(false)} />;
  }
  return (
    <div class={props.setBy ? 'ruler still' : 'ruler'}>
      <button type="button" class="reading" onClick={() => setTyping(true)}
        disabled={Boolean(props.setBy)}>
        <span class="face">
          {props.setBy && <span class="visually-hidden">{name}, </span>}
          <span class="name">{props.setBy ?? name}</span>{' '}
          <span class="value" ref={digits} />
          <span class="unit"> {shower.unit(scale.shown)}</span>
          <span class="visually-hidden">: type it</span>
        </span>
      </button>
      <div class="tape" ref={tape} role="slider" tabIndex={0} aria-label={name}
        aria-disabled={Boolean(props.setBy)} aria-valuemin={scale.min} aria-valuemax={scale.max}
        onKeyDown={keys}>
        <svg ref={strip} aria-hidden="true" width="1">{ticks}</svg>
        <span class="mark" />
      </div>
    </div>
  );
}

function keyed(key: string, value: number, scale: Scale): number | undefined {
  switch (key) {
    case 'ArrowRight': case 'ArrowUp': return value + scale.step;
    case 'ArrowLeft': case 'ArrowDown': return value - scale.step;
    case 'PageUp': return value + 10 * scale.step;
    case 'PageDown': return value - 10 * scale.step;
    case 'Home': return scale.min;
    case 'End': return scale.max;
    default: return undefined;
  }
}

/** The tape goes with the finger: to the left is more. */
function dragTape(
  tape: HTMLElement | null, valueNow: () => number, props: () => Props, put: (to: number) => void) {
  if (!tape) return undefined;
  let from: { x: number; value: number; id: number } | undefined;
  const down = (event: PointerEvent): void => {
    if (props().setBy || !event.isPrimary) return;
    from = { x: event.clientX, value: valueNow(), id: event.pointerId };
    tape.setPointerCapture(event.pointerId);
    tape.classList.add('held');
  };
  const move = (event: PointerEvent): void => {
    if (!from || event.pointerId !== from.id) return;
    put(from.value - (event.clientX - from.x) / props().scale.pxPerUnit);
  };
  const up = (event: PointerEvent): void => {
    if (!from || event.pointerId !== from.id) return;
    from = undefined;
    tape.classList.remove('held');
    props().onCommit?.();
  };
  tape.addEventListener('pointerdown', down);
  tape.addEventListener('pointermove', move);
  tape.addEventListener('pointerup', up);
  tape.addEventListener('pointercancel', up);
  return () => {
    tape.removeEventListener('pointerdown', down);
    tape.removeEventListener('pointermove', move);
    tape.removeEventListener('pointerup', up);
    tape.removeEventListener('pointercancel', up);
  };
}

function Typing(props: Props & { initial: string; onDone(): void }) {
  const { shower } = useApp();
  const { scale } = props;
  const input = useRef<HTMLInputElement>(null);
  const quantity = useQuantity({
    dimension: props.dimension,
    subject: props.name.toLowerCase(),
    low: shower.fromUnit(scale.min, scale.shown),
    high: shower.fromUnit(scale.max, scale.shown),
    unit: shower.unit(scale.shown),
  });
  useEffect(() => { input.current?.focus(); input.current?.select(); }, []);
  const take = async (event: Event): Promise<void> => {
    event.preventDefault();
    const value = await quantity.read(input.current?.value ?? '');
    if (value === undefined) return;
    props.onInput(value);
    props.onCommit?.();
    props.onDone();
  };
  return (
    <form class="ruler" onSubmit={(event) => void take(event)}
      onKeyDown={(event) => { if (event.key === 'Escape') props.onDone(); }}>
      <div class="typing">
        <input ref={input} aria-label={props.name} defaultValue={props.initial} inputMode="decimal"
          aria-invalid={quantity.trouble !== undefined} autocomplete="off"
          onInput={(event) => void quantity.read(event.currentTarget.value)} />
        <span class="unit">{shower.unit(scale.shown)}</span>
        <button class="button" type="submit">Set</button>
        <button class="button plain" type="button" onClick={props.onDone}>Leave</button>
      </div>
      <p class="trouble wrong" role="alert">{quantity.trouble}</p>
    </form>
  );
}
