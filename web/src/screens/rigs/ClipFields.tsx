// A clip: where it sits, what runs from it to the rod tip, and what it tows.
import type { DocumentTable } from '../../engine/answers';
import { useApp } from '../../state/app';
import { PieceFields } from './BodyFields';
import { isTable, pathText, put, tableAt, textAt, valueAt, without, type Path } from './document';
import { useEditing } from './editing';
import { Fold, PartTrouble, TextField } from './fields';
import { LineFields } from './LineFields';
import { fromCatalogue, plainOf } from './new_rig';
import { PlaceFields } from './PlaceFields';

interface Props {
  path: Path;
  number: number;
  of: number;
  onRemove(): void;
}

const LEADER = ['leader', 'leader_line'] as const;

export function ClipFields({ path, number, of, onRemove }: Props) {
  const { about, shower } = useApp();
  const { document } = useEditing();
  const name = textAt(document, [...path, 'name']);
  const title = of > 1 ? `Clip ${number}${name ? `, ${name}` : ''}` : 'Clip';
  const hasFlasher = valueAt(document, [...path, 'flasher']) !== undefined;
  const side = 'starboard' in tableAt(document, [...path, 'rod_tip']) ? 'starboard' : 'port';
  const long = shower.unit('length');
  return (
    <section class="rig-clip" aria-label={title}>
      <div class="row">
        <h2 class="grow">{title}</h2>
        <button type="button" class="button plain" onClick={onRemove}>Remove this clip</button>
      </div>
      <PartTrouble path={path} />
      <div class="rig-columns">
        <TextField path={[...path, 'above_ball']} label="Above the ball" unit={long}
          hint="Along the line, from the ball's eye up to the clip." />
        <TextField path={[...path, 'name']} label="Name" placeholder="none"
          hint={of > 1 ? 'Answers tell the clips apart by it: low, stacked.' : 'Needed only with a second clip.'} />
      </div>
      <PlaceFields path={[...path, 'rod_tip']} legend="Rod tip" usually={{ along: 'ahead', across: side }}
        hint="Where the tip stands when the rod is loaded, from the middle of the stern at the waterline." />
      <LineFields path={[...path, 'fishing_line']} legend="Fishing line"
        hint="From the clip up to the rod tip. Measure it with a calliper: the figure on a spool is a strength." />
      <div class="rig-columns">
        <TextField path={[...path, 'setback']} label={hasFlasher ? 'Setback, clip to flasher' : 'Setback, clip to lure'}
          unit={long} hint="How much line you pull off behind the ball before you clip it in." />
      </div>
      <Flasher path={path} />
      <Lure path={path} />
      <Fold title="More about this clip" path={path} keys={['rod_tip_tension', 'setback_line']}>
        <TextField path={[...path, 'rod_tip_tension']} label="Pull of the loaded rod" unit={shower.unit('force')}
          placeholder={`${shower.quantity(about.defaults.rod_tip_tension_N, 'force')}, judgement`}
          hint="A spring scale on the line at the tip, with the rod bent as you fish it." />
        <LineFields path={[...path, 'setback_line']} legend="The setback's line" otherwise="the fishing line" />
      </Fold>
    </section>
  );
}

const FLASHER_PULL = 'By a spring scale beside the boat, well aft and clear of the wake: just ahead of the flasher, ' +
  'leader and lure behind it. The mean of a run with and a run against the current. It narrows the band.';

/** With the flasher goes its leader, and comes back with it. */
function Flasher({ path }: { path: Path }) {
  const { about, shower } = useApp();
  const { document, change, stash } = useEditing();
  const key = `${pathText(path)} leader`;
  const clip = valueAt(document, path);
  const table: DocumentTable = isTable(clip) ? clip : {};
  const hasFlasher = 'flasher' in table;
  const remove = (): void => {
    stash.set(key, Object.fromEntries(LEADER.flatMap((one) => (one in table ? [[one, table[one] ?? '']] : []))));
    change(put(document, path, without(table, ['flasher', ...LEADER])));
  };
  const add = (flasher: DocumentTable): void => {
    const leader = { leader: plainOf(shower.units).leader, leader_line: fromCatalogue(about.catalogue.lines, 'nylon-0.7mm') };
    change(put(document, path, { ...leader, ...stash.get(key), ...table, flasher }));
  };
  return (
    <>
      <PieceFields path={[...path, 'flasher']} legend="Flasher" choices={about.catalogue.flashers}
        onNone={remove} onSome={add}
        pullHint={FLASHER_PULL} />
      {hasFlasher && (
        <>
          <TextField path={[...path, 'leader']} label="Leader, flasher to lure" unit={shower.units === 'metric' ? 'm' : 'in'} />
          <LineFields path={[...path, 'leader_line']} legend="The leader's line" />
        </>
      )}
    </>
  );
}

function Lure({ path }: { path: Path }) {
  const { about } = useApp();
  return (
    <PieceFields path={[...path, 'lure']} legend="Lure" choices={about.catalogue.lures}
      pullHint="By the same scale, just ahead of the lure, with nothing else on the line." />
  );
}
