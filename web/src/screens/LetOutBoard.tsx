// Where there is room: the side view, to scale, at the counts found.
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { SideViewPainter } from '../drawing/side_view';
import type { CountAnswer } from '../engine/answers';
import type { DepthRequest } from '../engine/requests';
import { useApp, type AppState, type GoodRig } from '../state/app';
import { NO_BANDS, useChase, type Chased, type Wishes } from '../state/chase';
import { seaOf } from '../state/sea';

/** A phone has no room for it. */
const ROOM = '(min-width: 700px) and (min-height: 600px)';

interface Props {
  rig: GoodRig;
  state: AppState;
  view: Map<string, Chased<CountAnswer>>;
}

function useMedia(query: string): boolean {
  const [matches, setMatches] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const list = matchMedia(query);
    const look = (): void => setMatches(list.matches);
    look();
    list.addEventListener('change', look);
    return () => list.removeEventListener('change', look);
  }, [query]);
  return matches;
}

export function LetOutBoard(props: Props) {
  return useMedia(ROOM) ? <Board {...props} /> : null;
}

/** The line at each count found, and at the end of the reach where there is none. */
function wishesFor({ rig, state, view }: Props): Wishes<DepthRequest> {
  const { hand, ground, settings } = state;
  const sea = seaOf(hand, ground && { ...ground, course_deg: null });
  return rig.facts.riggers.flatMap(({ name }) => {
    const count = view.get(name)?.answer?.riggers[0];
    if (!count) return [];
    return [[name, {
      question: 'depth', rig_toml: rig.toml, rigger: name, ball_mass_kg: hand.balls_kg[name] ?? null,
      count_m: count.count_m?.median ?? count.reach_count_m, ...sea, bands: false, shape: true,
      units: settings.units,
    }] as const];
  });
}

function Board(props: Props) {
  const { state } = props;
  const { shower } = useApp();
  const svg = useRef<SVGSVGElement>(null);
  const painter = useRef<SideViewPainter>();
  const shapes = useChase(wishesFor(props), NO_BANDS);

  useLayoutEffect(() => {
    const element = svg.current;
    if (!element) return undefined;
    const mine = new SideViewPainter(element);
    painter.current = mine;
    const size = new ResizeObserver(() => mine.resize(element.clientWidth, element.clientHeight));
    size.observe(element);
    mine.resize(element.clientWidth, element.clientHeight);
    return () => { size.disconnect(); element.replaceChildren(); };
  }, []);

  useLayoutEffect(() => {
    painter.current?.paint({
      riggers: [...shapes].flatMap(([name, { answer }]) => {
        const depth = answer?.riggers[0];
        return depth ? [{ name, depth, hasBand: false, fullBand: false }] : [];
      }),
      selected: state.hand.rigger, bottom_m: state.hand.bottom_m, settle: true, shower,
    });
  }, [shapes, state.hand.rigger, state.hand.bottom_m, state.settings.units]);

  return (
    <div class="let-out-board">
      <svg class="side" ref={svg} role="img" aria-label="Side view to scale, at the counts found." />
    </div>
  );
}
