// The figures above the side view: ball and lures, and what is left below the ball. They follow the
// finger, so that their words are written straight onto the elements, as the side view is.
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { say } from '../drawing/svg';
import type { Band } from '../engine/answers';
import { FigureBox, wordsOf } from '../parts/Figure';
import { useApp, type AppState } from '../state/app';
import type { LiveView } from '../state/live';
import type { Shower } from '../state/shown';
import { useStore, type Store } from '../state/store';

interface Shown {
  name: string;
  /** Nothing is known yet: undefined. */
  band: Band | undefined;
}

const unitsOf = (state: AppState) => state.settings.units;

/** How far the ball is above the bottom, or under it. */
function clearance(ball: Band, bottom_m: number): Shown {
  const off = { median: bottom_m - ball.median, low: bottom_m - ball.high, high: bottom_m - ball.low };
  return off.median < 0
    ? { name: 'On bottom by', band: { median: -off.median, low: -off.high, high: -off.low } }
    : { name: 'Off bottom', band: off };
}

function figuresOf(view: LiveView, { hand }: AppState): Shown[] {
  const depth = view.riggers.find((rigger) => rigger.name === hand.rigger)?.depth;
  if (!depth) return [{ name: 'Ball', band: undefined }];
  const several = depth.lures.length > 1;
  const lures = depth.lures.map((lure, i) => ({
    name: several ? `Lure, ${lure.clip || `clip ${i + 1}`}` : 'Lure', band: lure.depth_m }));
  const ball = depth.ball.depth_m;
  return [{ name: 'Ball', band: ball }, ...lures,
    ...(hand.bottom_m === null ? [] : [clearance(ball, hand.bottom_m)])];
}

function write(place: Element, figures: Shown[], shower: Shower): void {
  figures.forEach(({ band }, i) => {
    const [number, ends] = place.children[i]?.querySelectorAll('.number, .band') ?? [];
    const words = wordsOf(band, 'depth', shower);
    if (number) say(number, words.number);
    if (ends) say(ends, words.band);
  });
}

function haveNames(figures: Shown[], names: string[]): boolean {
  return figures.length === names.length && figures.every(({ name }, i) => name === names[i]);
}

const namesOf = (figures: Shown[]): string[] => figures.map(({ name }) => name);

export function LiveFigures({ views }: { views: Store<LiveView> }) {
  const app = useApp();
  const { shower } = app;
  useStore(app.state, unitsOf);
  const place = useRef<HTMLDivElement>(null);
  const now = (): Shown[] => figuresOf(views.get(), app.state.get());
  const [names, setNames] = useState(() => namesOf(now()));
  const drawn = useRef(names);
  drawn.current = names;

  useLayoutEffect(() => {
    if (place.current && haveNames(now(), names)) write(place.current, now(), shower);
  });
  useEffect(() => {
    const follow = (): void => {
      const figures = now();
      // Other figures than before: their boxes are drawn first, and filled after that.
      if (!haveNames(figures, drawn.current)) setNames(namesOf(figures));
      else if (place.current) write(place.current, figures, app.shower);
    };
    const ofHand = ({ hand }: AppState): string => `${hand.rigger}\n${hand.bottom_m}`;
    let last = ofHand(app.state.get());
    const ends = [views.watch(follow), app.state.watch(() => {
      const hand = ofHand(app.state.get());
      if (hand === last) return;
      last = hand;
      follow();
    })];
    follow();
    return () => { for (const end of ends) end(); };
  }, []);

  return (
    <div class="figures" ref={place}>
      {names.map((name, i) => <FigureBox key={i} name={name} unit={shower.unit('depth')} />)}
    </div>
  );
}
