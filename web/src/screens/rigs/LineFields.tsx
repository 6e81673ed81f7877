// A line: what it is and how thick; or constants of one's own.
import type { ComponentChildren } from 'preact';
import type { DocumentTable, DocumentValue } from '../../engine/answers';
import { useApp } from '../../state/app';
import { constructions, diameters, splitLine } from './catalogue';
import { pathText, tableAt, textAt, valueAt, type Path } from './document';
import { useEditing } from './editing';
import { ChoiceField, FlagField, Fold, PartTrouble, TextField } from './fields';

interface Props {
  path: Path;
  legend: string;
  hint?: ComponentChildren;
  /** It may be left out: what it is then, in words. */
  otherwise?: string;
}

/** What a line of constants alone must state besides its diameter, and its stiffness. */
const OWN = [
  'normal_drag_coefficient', 'tangential_drag_coefficient', 'weight_in_water', 'weight_in_air', 'stiffness',
] as const;
const MATERIAL = ['solid_fraction', 'density', 'modulus'] as const;

function choiceOf(table: DocumentTable): string {
  const from = textAt(table, ['from']);
  if (from) return `from:${splitLine(from).construction}`;
  return 'kind' in table ? `kind:${textAt(table, ['kind'])}` : 'own';
}

function diameterOf(table: DocumentTable): string {
  return 'diameter' in table ? textAt(table, ['diameter']) : splitLine(textAt(table, ['from'])).diameter;
}

/** Another line in the place of this one: of what is written only the thickness is its too. */
export function chooseLine(table: DocumentTable, choice: string): DocumentTable {
  const [way = '', what = ''] = choice.split(/:(.*)/s);
  const diameter = diameterOf(table);
  return way === 'own' ? { diameter } : { [way]: what, diameter };
}

export function LineFields({ path, legend, hint, otherwise }: Props) {
  const { about } = useApp();
  const { document, set, stash } = useEditing();
  const isThere = otherwise === undefined || valueAt(document, path) !== undefined;
  const table = tableAt(document, path);
  const choice = isThere ? choiceOf(table) : 'none';
  const known = constructions(about.catalogue);
  const choices = [
    ...(otherwise === undefined ? [] : [{ value: 'none', name: otherwise }]),
    ...known.map(({ id, name }) => ({ value: `from:${id}`, name })),
    { value: 'own', name: 'my own figures' },
  ];
  if (!choices.some(({ value }) => value === choice)) {
    choices.push({ value: choice, name: choice.replace(/^\w+:/, '') || 'not said' });
  }
  const choose = (next: string): void => {
    const key = pathText(path);
    stash.set(`${key} ${choice}`, table);
    set(path, next === 'none' ? undefined : stash.get(`${key} ${next}`) ?? chooseLine(table, next));
  };
  const thicken = (value: DocumentValue | undefined): void => set(path, {
    ...table, ...('from' in table ? { from: splitLine(textAt(table, ['from'])).construction } : {}),
    diameter: value ?? '',
  });
  return (
    <fieldset class="rig-part">
      <legend>{legend}</legend>
      {hint && <p class="hint soft">{hint}</p>}
      <PartTrouble path={path} />
      <div class="rig-columns">
        <ChoiceField path={[...path, choice.startsWith('kind') ? 'kind' : 'from']} label="What it is"
          value={choice} choices={choices} onChoose={choose} />
        {isThere && (
          <TextField path={[...path, 'diameter']} label="Thickness over all" unit="mm"
            shown={diameterOf(table)} onValue={thicken} placeholder="0.8 mm"
            options={diameters(about.catalogue, splitLine(textAt(table, ['from'])).construction)} />
        )}
      </div>
      {isThere && choice === 'own' && <Constants path={path} />}
      {isThere && <MoreOfLine path={path} own={choice === 'own'} />}
    </fieldset>
  );
}

function Constants({ path }: { path: Path }) {
  const { shower } = useApp();
  return (
    <div class="rig-columns">
      <TextField path={[...path, 'normal_drag_coefficient']} number label="Drag across the line"
        hint="A bare number, the same at every speed: about 1.2." />
      <TextField path={[...path, 'tangential_drag_coefficient']} number label="Drag along the line"
        hint="A bare number: about 0.01." />
      <TextField path={[...path, 'weight_in_water']} unit="N/m" label="Weight in water, per length" />
      <TextField path={[...path, 'weight_in_air']} unit="N/m" label="Weight in air, per length" />
      <TextField path={[...path, 'stiffness']} unit={shower.unit('force')} label="Stiffness"
        hint="The force that would stretch it to twice its length; or none: it does not stretch." />
    </div>
  );
}

function MoreOfLine({ path, own }: { path: Path; own: boolean }) {
  const keys = ['name', 'strumming', ...(own ? [] : OWN), ...MATERIAL];
  return (
    <Fold title="More about this line" path={path} keys={keys}>
      <div class="rig-columns">
        <TextField path={[...path, 'name']} label="Name" hint="What answers call it." />
        <FlagField path={[...path, 'strumming']} label="It strums"
          hint="Hums under way: more drag, by a published law. Otherwise that sits in the band." />
      </div>
      {!own && (
        <>
          <p class="hint soft">A figure here takes the place of the catalogue's.</p>
          <Constants path={path} />
        </>
      )}
      <div class="rig-columns">
        <TextField path={[...path, 'solid_fraction']} number label="Solid part of its circle"
          hint="A bare number, 0.05 to 1: the rest is gaps between strands." />
        <TextField path={[...path, 'density']} unit="kg/m3" label="Density of the solid" />
        <TextField path={[...path, 'modulus']} unit="GPa" label="Young's modulus of the solid" />
      </div>
    </Fold>
  );
}
