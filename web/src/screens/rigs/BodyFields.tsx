// What hangs on the line: ball, flasher, lure.
import type { ComponentChildren } from 'preact';
import type { DocumentTable } from '../../engine/answers';
import { useApp } from '../../state/app';
import { ballWeights, shapes, splitBall, type Choice } from './catalogue';
import { has, only, pathText, tableAt, textAt, valueAt, without, type Path } from './document';
import { useEditing } from './editing';
import { ChoiceField, Fold, PartTrouble, TextField } from './fields';

const SHAPES: Record<string, string> = {
  sphere: 'round', finned: 'finned, fish-shaped', flat: 'flat, a disc on its edge',
};
const BALL_OWN = ['weight_in_water', 'drag_area'] as const;
const BALL_MORE = ['name', 'density', 'eye_to_centre', 'lift_area', 'side_area'] as const;

/** A ball as shape and weight, however it was written. */
export function ballByWeight(table: DocumentTable): DocumentTable {
  const split = splitBall(textAt(table, ['from']));
  return split ? { ...without(table, ['from']), weight: split.weight, shape: split.shape } : table;
}

/** "sphere", "finned", "flat", "own", or the name of something else in the catalogue. */
export function ballChoice(table: DocumentTable): string {
  const ball = ballByWeight(table);
  if (has(ball, ['from'])) return textAt(ball, ['from']);
  const isOwn = !('weight' in ball) && !('shape' in ball) && BALL_OWN.some((key) => key in ball);
  return isOwn ? 'own' : textAt(ball, ['shape']) || 'sphere';
}

export function BallFields({ path }: { path: Path }) {
  const { about, shower } = useApp();
  const { document, set, stash } = useEditing();
  const written = tableAt(document, path);
  const table = ballByWeight(written);
  const choice = ballChoice(written);
  const own = choice === 'own';
  const choices = [...new Set([...shapes(about.catalogue), ...(own ? [] : [choice])])]
    .map((value) => ({ value, name: SHAPES[value] ?? value }));
  const choose = (next: string): void => {
    const key = `${pathText(path)} ${next === 'own' ? 'own' : 'weight'}`;
    if (next === 'own') {
      stash.set(`${pathText(path)} weight`, only(table, ['weight', 'density']));
      set(path, { ...without(table, ['from', 'weight', 'shape', 'density']), weight_in_water: '', drag_area: '',
        ...stash.get(key) });
    } else if (own) {
      stash.set(`${pathText(path)} own`, only(table, BALL_OWN));
      set(path, { weight: '', ...without(table, BALL_OWN), ...stash.get(key), shape: next });
    } else {
      set(path, { weight: '', ...without(table, ['from']), shape: next });
    }
  };
  // A field of its own for what the catalogue's name says already: then the name goes.
  const setIn = (key: string) => (value: unknown): void => {
    const { [key]: _old, ...rest } = table;
    set(path, value === undefined && key !== 'weight' ? rest : { ...table, [key]: String(value ?? '') });
  };
  return (
    <fieldset class="rig-part">
      <legend>Ball</legend>
      <PartTrouble path={path} />
      <div class="rig-columns">
        <ChoiceField path={[...path, 'from' in written && !splitBall(textAt(written, ['from'])) ? 'from' : 'shape']}
          label="Shape" value={choice} onChoose={choose}
          choices={[...choices, { value: 'own', name: 'my own figures' }]} />
        {!own && !has(table, ['from']) && (
          <TextField path={[...path, 'weight']} label="Weight in air" unit={shower.unit('mass')}
            hint="Put it on a scale: what is stamped on it is often a few per cent off."
            options={ballWeights(about.catalogue)} shown={textAt(table, ['weight'])} onValue={setIn('weight')} />
        )}
      </div>
      {own && <BallConstants path={path} />}
      <Fold title="More about this ball" path={path} keys={[...BALL_MORE, ...(own ? [] : BALL_OWN)]}>
        <div class="rig-columns">
          <TextField path={[...path, 'name']} label="Name" hint="What answers call it." />
          {!own && <TextField path={[...path, 'density']} label="Density of the metal" unit="kg/m3"
            hint="Lead unless you say otherwise. Iron is about 7200 kg/m3." onValue={setIn('density')} />}
          <TextField path={[...path, 'eye_to_centre']} label="From its eye down to its middle"
            unit={shortUnit(shower.units)} />
        </div>
        {!own && <p class="hint soft">A figure below takes the place of what follows from weight and shape.</p>}
        {!own && <BallConstants path={path} />}
        <div class="rig-columns">
          <TextField path={[...path, 'lift_area']} label="Lift area" unit="m2" hint="Less than zero: it dives." />
          <TextField path={[...path, 'side_area']} label="Side area" unit="m2"
            hint="For a bent tail: the pull to the right of its way." />
        </div>
      </Fold>
    </fieldset>
  );
}

function BallConstants({ path }: { path: Path }) {
  const { shower } = useApp();
  return (
    <div class="rig-columns">
      <TextField path={[...path, 'weight_in_water']} label="Weight in water" unit={shower.unit('force')} />
      <TextField path={[...path, 'drag_area']} label="Drag area" unit="m2" hint="Drag over dynamic pressure." />
    </div>
  );
}

export function shortUnit(units: string): string {
  return units === 'metric' ? 'cm' : 'in';
}

interface PieceProps {
  path: Path;
  legend: string;
  choices: Choice[];
  hint?: ComponentChildren;
  pullHint: ComponentChildren;
  /** There may be none: what else the choice does is the caller's. */
  onNone?: () => void;
  onSome?: (table: DocumentTable) => void;
}

const PIECE_KEYS = ['name', 'weight', 'density', 'weight_in_water', 'drag_area', 'lift_area', 'side_area'] as const;

/** A flasher or a lure. */
export function PieceFields({ path, legend, choices, hint, pullHint, onNone, onSome }: PieceProps) {
  const { document, set, stash } = useEditing();
  const isThere = !onNone || valueAt(document, path) !== undefined;
  const table = tableAt(document, path);
  const from = textAt(table, ['from']);
  const choice = !isThere ? 'none' : from ? `from:${from}` : 'own';
  const listed = [
    ...(onNone ? [{ value: 'none', name: `no ${legend.toLowerCase()}` }] : []),
    ...choices.map(({ id, name }) => ({ value: `from:${id}`, name })),
    { value: 'own', name: 'my own figures' },
  ];
  if (!listed.some(({ value }) => value === choice)) listed.push({ value: choice, name: from });
  const choose = (next: string): void => {
    const key = pathText(path);
    if (isThere) stash.set(`${key} ${choice}`, table);
    if (next === 'none') {
      onNone?.();
      return;
    }
    // The figures of the old piece are not the new one's; its own come back with it.
    const fresh: DocumentTable = next === 'own' ? { weight_in_water: '' } : { from: next.slice('from:'.length) };
    const piece = stash.get(`${key} ${next}`) ?? fresh;
    if (onSome) onSome(piece);
    else set(path, piece);
  };
  return (
    <fieldset class="rig-part">
      <legend>{legend}</legend>
      {hint && <p class="hint soft">{hint}</p>}
      <PartTrouble path={path} />
      <ChoiceField path={[...path, 'from']} label="What it is" value={choice} choices={listed} onChoose={choose} />
      {isThere && (
        <TextField path={[...path, 'pull']} label={from ? 'Its pull, if you measured it' : 'Its pull'} hint={pullHint}
          placeholder="2.1 lb at 2.5 mph" />
      )}
      {isThere && !from && <PieceConstants path={path} />}
      {isThere && from && (
        <Fold title={`More about this ${legend.toLowerCase()}`} path={path} keys={PIECE_KEYS}>
          <p class="hint soft">A figure here takes the place of the catalogue's.</p>
          <PieceConstants path={path} />
        </Fold>
      )}
    </fieldset>
  );
}

function PieceConstants({ path }: { path: Path }) {
  const { shower } = useApp();
  const weight = shower.units === 'metric' ? 'g' : 'oz';
  return (
    <div class="rig-columns">
      <TextField path={[...path, 'weight']} label="Weight in air" unit={weight} hint="On a kitchen scale, hooks and swivels on." />
      <TextField path={[...path, 'density']} label="Density" unit="kg/m3" hint="Plastic about 1400, brass or steel about 8000 kg/m3." />
      <TextField path={[...path, 'weight_in_water']} label="Weight in water" unit={shower.unit('force')}
        hint="In place of weight and density. Less than zero: it floats." />
      <TextField path={[...path, 'drag_area']} label="Drag area" unit="m2" hint="In place of the pull." />
      <TextField path={[...path, 'lift_area']} label="Lift area" unit="m2" hint="Less than zero: it dives." />
      <TextField path={[...path, 'side_area']} label="Side area" unit="m2" hint="The pull to the right of its way." />
      <TextField path={[...path, 'name']} label="Name" hint="What answers call it." />
    </div>
  );
}
