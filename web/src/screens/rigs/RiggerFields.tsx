// One rigger: its boom, line, ball, and its clips.
import { useApp } from '../../state/app';
import { BallFields } from './BodyFields';
import { ClipFields } from './ClipFields';
import { tableAt, tablesAt, textAt, withoutItem, type Path } from './document';
import { useEditing } from './editing';
import { Fold, PartTrouble, TextField } from './fields';
import { LineFields } from './LineFields';
import { MarksFields } from './MarksFields';
import { withClip } from './new_rig';
import { PlaceFields } from './PlaceFields';

interface Props {
  path: Path;
  /** Tells of something taken away, with the way back. */
  onRemoved(words: string, list: Path, index: number): void;
}

const MOST_CLIPS = 20;

export function RiggerFields({ path, onRemoved }: Props) {
  const { about, shower } = useApp();
  const { document, change } = useEditing();
  const clips = tablesAt(document, [...path, 'clips']);
  const { defaults } = about;
  const side = 'starboard' in tableAt(document, [...path, 'boom_tip']) ? 'starboard' : 'port';
  const removeClip = (index: number): void => {
    const list = [...path, 'clips'];
    onRemoved(`${textAt(document, [...list, index, 'name']) || 'The clip'} removed.`, list, index);
    change(withoutItem(document, list, index));
  };
  return (
    <div class="rig-rigger">
      <PartTrouble path={path} />
      <TextField path={[...path, 'name']} label="Name of the rigger" placeholder="port" />
      <PlaceFields path={[...path, 'boom_tip']} legend="Boom tip" usually={{ along: 'aft', across: side }}
        hint="With a tape, from the middle of the stern at the waterline to the tip of the boom." />
      <LineFields path={[...path, 'line']} legend="Line to the ball"
        hint="Measure the line with a calliper, in three places: wire where its strands stand widest, wet braid without squeezing it flat. The depth lost grows as the square of the thickness." />
      <BallFields path={[...path, 'ball']} />
      <div class="rig-columns">
        <TextField path={[...path, 'line_on_reel']} label="Line on the reel" unit={shower.unit('length')}
          placeholder={`${shower.quantity(defaults.line_on_reel_m, 'depth')}, common practice`}
          hint="How much there is to let out." />
      </div>
      <Fold title="More about this rigger" path={path} keys={['largest_angle', 'counter_marks']}>
        <TextField path={[...path, 'largest_angle']} label="How far the line may lean" unit="deg"
          placeholder={`${shower.quantity((defaults.largest_boom_angle_deg * Math.PI) / 180, 'angle')}, common practice`}
          hint="At the boom, from straight down: where it would foul the stern or the propeller." />
        <MarksFields path={[...path, 'counter_marks']} />
      </Fold>
      <PartTrouble path={[...path, 'clips']} />
      {clips.map((_clip, i) => (
        <ClipFields key={i} path={[...path, 'clips', i]} number={i + 1} of={clips.length}
          onRemove={() => removeClip(i)} />
      ))}
      <div class="row">
        <button type="button" class="button" disabled={clips.length >= MOST_CLIPS}
          onClick={() => change(withClip(document, path, about.catalogue, shower.units))}>
          {clips.length === 0 ? 'Add a clip' : 'Add a clip, stacked'}</button>
        {clips.length === 0 && <p class="grow soft">Without a clip there is a line and a ball, and no lure.</p>}
      </div>
    </div>
  );
}
