// What a tape says when the counter reads so much.
import { useApp } from '../../state/app';
import { put, tablesAt, withoutItem, type Path } from './document';
import { useEditing } from './editing';
import { PartTrouble, TextField } from './fields';

export function MarksFields({ path }: { path: Path }) {
  const { shower } = useApp();
  const { document, change } = useEditing();
  const marks = tablesAt(document, path);
  const unit = shower.unit('length');
  return (
    <fieldset class="rig-part">
      <legend>Counter marks</legend>
      <p class="hint soft">
        If you taped your line: the ball's eye at the water's surface is zero for both. From the shortest to the
        longest. Without marks the counter counts as right.
      </p>
      <PartTrouble path={path} />
      {marks.map((_mark, i) => (
        <div class="rig-mark" key={i}>
          <TextField path={[...path, i, 'reads']} label="Counter reads" unit={unit} />
          <TextField path={[...path, i, 'measured']} label="Tape says" unit={unit} />
          <button type="button" class="button" aria-label={`Remove mark ${i + 1}`}
            onClick={() => change(withoutItem(document, path, i))}>Remove</button>
        </div>
      ))}
      <button type="button" class="button"
        onClick={() => change(put(document, [...path, marks.length], { reads: '', measured: '' }))}>Add a mark</button>
    </fieldset>
  );
}
