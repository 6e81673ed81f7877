// A place on the boat: from the middle of the stern at the waterline.
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { useApp } from '../../state/app';
import { has, put, textAt, type Path } from './document';
import { useEditing } from './editing';
import { PartTrouble, TextField } from './fields';

type Way = 'ahead' | 'aft' | 'port' | 'starboard';

interface Props {
  path: Path;
  legend: string;
  hint: ComponentChildren;
  usually: { along: 'ahead' | 'aft'; across: 'port' | 'starboard' };
}

export function PlaceFields({ path, legend, hint, usually }: Props) {
  const { shower } = useApp();
  const unit = shower.unit('length');
  return (
    <fieldset class="rig-part">
      <legend>{legend}</legend>
      <p class="hint soft">{hint}</p>
      <PartTrouble path={path} />
      <div class="rig-columns rig-place">
        <Along path={path} label="Along, from the stern" ways={['aft', 'ahead']} usual={usually.along} unit={unit} />
        <Along path={path} label="Out from the middle" ways={['port', 'starboard']} usual={usually.across} unit={unit} />
        <TextField path={[...path, 'up']} label="Up from the waterline" unit={unit} />
      </div>
    </fieldset>
  );
}

const NAMES: Record<Way, string> = {
  aft: 'aft', ahead: 'ahead', port: 'to port', starboard: 'to starboard',
};

/** A distance either of two ways. */
function Along({ path, label, ways, usual, unit }: {
  path: Path; label: string; ways: [Way, Way]; usual: Way; unit: string }) {
  const { document, change } = useEditing();
  const [chosen, setChosen] = useState<Way>(usual);
  const way = ways.find((one) => has(document, [...path, one])) ?? chosen;
  const turn = (to: Way): void => {
    setChosen(to);
    const text = textAt(document, [...path, way]);
    const cleared = put(document, [...path, way], undefined);
    if (text) change(put(cleared, [...path, to], text));
  };
  return (
    <TextField path={[...path, way]} label={label} unit={unit} placeholder="0" beside={
      <select value={way} aria-label={`${label}: which way`}
        onChange={(event) => turn(event.currentTarget.value as Way)}>
        {ways.map((one) => <option key={one} value={one}>{NAMES[one]}</option>)}
      </select>
    } />
  );
}
