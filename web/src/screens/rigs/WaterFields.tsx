// The water that belongs to a rig, where it is known; usually it is said with the question.
import type { DocumentTable } from '../../engine/answers';
import { tableAt, valueAt } from './document';
import { useEditing } from './editing';
import { ChoiceField, Fold, PartTrouble, TextField } from './fields';

const PATH = ['water'] as const;

function choiceOf(table: DocumentTable, isThere: boolean): string {
  if (!isThere) return 'none';
  return 'density' in table || 'viscosity' in table ? 'density' : 'temperature';
}

export function WaterFields() {
  const { document, set, stash } = useEditing();
  const table = tableAt(document, PATH);
  const choice = choiceOf(table, valueAt(document, PATH) !== undefined);
  const choose = (next: string): void => {
    stash.set(`water ${choice}`, table);
    const fresh: DocumentTable = next === 'density' ? { density: '' } : { temperature: '', salinity: '' };
    set(PATH, next === 'none' ? undefined : stash.get(`water ${next}`) ?? fresh);
  };
  return (
    <Fold title="The water of this rig" path={[]} keys={['water']}>
      <PartTrouble path={PATH} />
      <ChoiceField path={PATH} label="Water" value={choice} onChoose={choose} choices={[
        { value: 'none', name: 'as chosen in Settings' },
        { value: 'temperature', name: 'by temperature and salt' },
        { value: 'density', name: 'by density' },
      ]} />
      {choice === 'temperature' && (
        <div class="rig-columns">
          <TextField path={[...PATH, 'temperature']} label="Temperature" unit="C" placeholder="10 C" />
          <TextField path={[...PATH, 'salinity']} label="Salt" unit="psu" placeholder="30 psu" hint="Fresh water has 0." />
        </div>
      )}
      {choice === 'density' && (
        <div class="rig-columns">
          <TextField path={[...PATH, 'density']} label="Density" unit="kg/m3" placeholder="1025 kg/m3" />
          <TextField path={[...PATH, 'viscosity']} label="Viscosity, kinematic" unit="mm2/s"
            hint="Left out: that of the sea at 10 C." />
        </div>
      )}
    </Fold>
  );
}
