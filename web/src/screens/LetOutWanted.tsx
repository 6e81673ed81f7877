// What is wanted: whose depth, and how deep.
import { Ruler } from '../parts/Ruler';
import { depthScale } from '../parts/scales';
import { useApp, type AppState, type GoodRig } from '../state/app';
import type { Hand } from '../state/sea';
import { useStore } from '../state/store';
import { capital, lureName } from '../state/words';

const handOf = (state: AppState) => state.hand;
const unitsOf = (state: AppState) => state.settings.units;

/** A little past the end of the longest line: what would get there is worth knowing. */
const PAST_REEL = 1.25;

export function DepthRuler({ rig }: { rig: GoodRig }) {
  const app = useApp();
  const { wanted } = useStore(app.state, handOf);
  const units = useStore(app.state, unitsOf);
  const longest_m = Math.max(...rig.facts.riggers.map(({ line_on_reel_m }) => line_on_reel_m));
  const most_m = Math.min(PAST_REEL * longest_m, app.about.limits.largest_count_m);
  const scale = depthScale(units, 0, most_m);
  return (
    <Ruler name="Depth" dimension="length" value={wanted.depth_m}
      // Nothing is let out for no depth at all.
      scale={{ ...scale, min: scale.step }}
      onInput={(depth_m) => app.changeHand({ wanted: { ...app.state.get().hand.wanted, depth_m } })} />
  );
}

interface Props {
  rig: GoodRig;
  clips: Record<string, number>;
  onClip(rigger: string, clip: number): void;
}

interface Choice {
  of: Hand['wanted']['of'];
  clip: number;
  name: string;
}

/** The ball, or the lure of each clip of the chosen rigger. */
export function WantedChoice({ rig, clips, onClip }: Props) {
  const app = useApp();
  const { wanted, rigger: name } = useStore(app.state, handOf);
  const rigger = rig.facts.riggers.find((one) => one.name === name) ?? rig.facts.riggers[0];
  if (!rigger) return null;
  const clip = clips[rigger.name] ?? 0;
  const choices: Choice[] = [
    { of: 'ball', clip: 0, name: 'Ball' },
    ...(rigger.clips.length ? rigger.clips : [{ name: '' }]).map((_, i): Choice => ({
      of: 'lure', clip: i, name: capital(lureName(rigger.clips, i).replace(/^the /, '')),
    })),
  ];
  const choose = (choice: Choice): void => {
    if (choice.of === 'lure') onClip(rigger.name, choice.clip);
    app.changeHand({ wanted: { ...app.state.get().hand.wanted, of: choice.of } });
  };
  return (
    <div class="let-out-wanted" role="group" aria-label="Whose depth">
      {choices.map((choice) => {
        const chosen = choice.of === wanted.of && (choice.of === 'ball' || choice.clip === clip);
        return (
          <button key={choice.name} type="button" class={chosen ? 'button chosen' : 'button'}
            aria-pressed={chosen} onClick={() => choose(choice)}>{choice.name}</button>
        );
      })}
    </div>
  );
}
