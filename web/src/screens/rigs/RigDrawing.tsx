// A rigger of the rig as it is now good, to scale, at the count and speed in hand.
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { SideViewPainter, type Pictured } from '../../drawing/side_view';
import type { RigFacts } from '../../engine/answers';
import { isProblem } from '../../engine/desk';
import type { DepthRequest } from '../../engine/requests';
import { useApp, type App, type AppState, type GoodRig } from '../../state/app';
import { usualHand } from '../../state/hand';
import { seaOf } from '../../state/sea';
import { useStore } from '../../state/store';
import { wordsOfProblem } from './fields';

type Rigger = RigFacts['riggers'][number];

interface Props {
  rig: GoodRig;
  rigger: Rigger;
}

const handOf = (state: AppState) => state.hand;
const groundOf = (state: AppState) => state.ground;

function requestFor(app: App, rig: GoodRig, rigger: Rigger): DepthRequest {
  const { hand, ground } = app.state.get();
  const count_m = hand.counts_m[rigger.name] ?? usualHand().counts_m[''] ?? 0;
  return { question: 'depth', rig_toml: rig.toml, rigger: rigger.name, ...seaOf(hand, ground), bands: false,
    count_m: Math.min(count_m, rigger.line_on_reel_m), units: app.shower.units, shape: true };
}

function wordsFor(app: App, { count_m, speed_mps }: DepthRequest): string {
  const { shower } = app;
  return `At ${shower.quantity(count_m, 'depth')} on the counter and ${shower.quantity(speed_mps ?? 0, 'speed')}. Middle figures.`;
}

interface Picture {
  rigger: Pictured | undefined;
  problem: string | undefined;
  words: string;
}

/** The last that could be worked out stays; `problem` says why there is no newer one. */
function usePicture(rig: GoodRig, rigger: Rigger): Picture {
  const app = useApp();
  const hand = useStore(app.state, handOf);
  const ground = useStore(app.state, groundOf);
  const [picture, setPicture] = useState<Picture>({ rigger: undefined, problem: undefined, words: '' });
  useEffect(() => {
    let stale = false;
    const request = requestFor(app, rig, rigger);
    void app.desk.ask(request).then((outcome) => {
      if (stale) return;
      if (isProblem(outcome)) {
        setPicture((before) => ({ ...before, problem: wordsOfProblem(outcome.problem) }));
        return;
      }
      const [depth] = outcome.riggers;
      setPicture({ problem: undefined, words: wordsFor(app, request),
        rigger: depth && { name: depth.name, depth, hasBand: false, fullBand: false } });
      // An engine that stopped is told by the form.
    }, () => undefined);
    return () => { stale = true; };
  }, [rig.toml, rigger.name, hand, ground]);
  return picture;
}

export function RigDrawing({ rig, rigger }: Props) {
  const app = useApp();
  const svg = useRef<SVGSVGElement>(null);
  const painter = useRef<SideViewPainter>();
  const picture = usePicture(rig, rigger);
  useLayoutEffect(() => {
    const element = svg.current;
    if (!element) return undefined;
    const mine = new SideViewPainter(element);
    painter.current = mine;
    const fit = (): void => mine.resize(element.clientWidth, element.clientHeight);
    const size = new ResizeObserver(fit);
    size.observe(element);
    fit();
    return () => { size.disconnect(); element.replaceChildren(); };
  }, []);
  useLayoutEffect(() => {
    painter.current?.paint({ riggers: picture.rigger ? [picture.rigger] : [], selected: picture.rigger?.name ?? '',
      bottom_m: null, settle: true, shower: app.shower });
  }, [picture]);
  return (
    <figure class="rig-drawing">
      <svg class="side" ref={svg} role="img" aria-label={`${rig.facts.name}, ${rigger.name}: side view to scale. ${picture.words}`} />
      <figcaption class="soft">{picture.words}</figcaption>
      {picture.problem && <p class="wrong">{picture.problem}</p>}
    </figure>
  );
}
