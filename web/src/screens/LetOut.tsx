// What count puts the ball or the lure at a depth: the answer first, what is wanted under the thumb.
import { useRef, useState } from 'preact/hooks';
import type { CountRequest } from '../engine/requests';
import { BallRuler, SpeedRuler } from '../parts/hands';
import { Notes } from '../parts/Remarks';
import { useApp, type AppState, type GoodRig } from '../state/app';
import { ROUGH_THEN_FULL, useChase, working, type Wishes } from '../state/chase';
import { seaOf } from '../state/sea';
import { useStore } from '../state/store';
import { LetOutAnswer } from './LetOutAnswer';
import { LetOutBoard } from './LetOutBoard';
import { DepthRuler, WantedChoice } from './LetOutWanted';
import { spokenWords } from './let_out_words';
import { echo } from '../state/echo';
import './let_out.css';

const whole = (state: AppState) => state;

/** One question a rigger, so that only what changed is asked again. */
function wishesFor(rig: GoodRig, state: AppState, clips: Record<string, number>): Wishes<CountRequest> {
  const { hand, ground, settings } = state;
  // Nothing here hangs on which way the boat goes, and a course off the phone is never still.
  const sea = seaOf(hand, ground && { ...ground, course_deg: null });
  return rig.facts.riggers.map(({ name, clips: has }) => {
    const clip = clips[name] ?? 0;
    return [name, {
      question: 'count', rig_toml: rig.toml, rigger: name,
      ball_mass_kg: hand.balls_kg[name] ?? null,
      depth_m: hand.wanted.depth_m, of: hand.wanted.of,
      ...(hand.wanted.of === 'lure' && clip > 0 ? { clip: has[clip]?.name || String(clip + 1) } : {}),
      ...sea, bands: true, units: settings.units,
    }];
  });
}

export function LetOut() {
  const app = useApp();
  const state = useStore(app.state, whole);
  const rig = app.activeRig();
  if (!rig) {
    return (
      <section class="screen">
        <h1>Let out</h1>
        <p>There is no rig that can be read. Mend one, or make one, under <a href="#rigs">Rigs</a>.</p>
      </section>
    );
  }
  return <LetOutOf rig={rig} state={state} />;
}

function LetOutOf({ rig, state }: { rig: GoodRig; state: AppState }) {
  const { shower } = useApp();
  /** By rigger: the clip whose lure is meant, from the lowest. */
  const [clips, setClips] = useState<Record<string, number>>({});
  const view = useChase(wishesFor(rig, state, clips), ROUGH_THEN_FULL);
  const below = useRef<HTMLDivElement>(null);
  const { riggers } = rig.facts;
  const answers = [...view.values()].flatMap(({ answer }) => answer ?? []);
  const cautions = unique(answers.flatMap((answer) => answer.cautions));
  const wanted = echo(shower, state.hand.wanted.depth_m, 'depth');
  const spoken = working(view) ? '' : riggers.flatMap((rigger) => {
    const count = view.get(rigger.name)?.answer?.riggers[0];
    return count ? spokenWords(count, rigger, shower, wanted) : [];
  }).join(' ');
  return (
    <section class="let-out" aria-labelledby="let-out-title" aria-busy={working(view)}>
      <div class="let-out-main">
        <div class={riggers.length === 1 ? 'let-out-answers one' : 'let-out-answers several'}>
          {cautions[0] && (
            <p class="let-out-mind">{cautions[0]}{' '}
              {cautions.length > 1 && (
                <button type="button" onClick={() => below.current?.scrollIntoView({ block: 'end' })}>
                  {cautions.length - 1} more below</button>
              )}
            </p>
          )}
          <h1 id="let-out-title">Let out</h1>
          {riggers.map((rigger) => (
            <LetOutAnswer key={rigger.name} rigger={rigger} chased={view.get(rigger.name)}
              alone={riggers.length === 1} chosen={rigger.name === state.hand.rigger} wanted={wanted} />
          ))}
          <p class="visually-hidden" role="status">{spoken || 'Working out the band.'}</p>
        </div>
        <LetOutBoard rig={rig} state={state} view={view} />
        <div class="let-out-hands">
          <WantedChoice rig={rig} clips={clips} onClip={(name, clip) => setClips({ ...clips, [name]: clip })} />
          <DepthRuler rig={rig} />
          <SpeedRuler />
          <BallRuler />
        </div>
      </div>
      <div class="let-out-below" ref={below}>
        {cautions.length > 1 && (
          <aside class="caution" aria-label="More cautions">
            {cautions.slice(1).map((line) => <p key={line}>{line}</p>)}
          </aside>
        )}
        <Notes lines={unique(answers.flatMap((answer) => answer.notes))} />
      </div>
    </section>
  );
}

function unique(lines: string[]): string[] {
  return [...new Set(lines)];
}
