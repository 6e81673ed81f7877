// Which of the kept rigs are compared; those that cannot be read are named.
import type { Rig } from '../state/app';
import { writtenName } from '../state/words';

interface Props {
  rigs: Rig[];
  /** Ids of those left out by hand. */
  left: ReadonlySet<string>;
  onPick(id: string, on: boolean): void;
}

export function ComparePick({ rigs, left, onPick }: Props) {
  const good = rigs.filter(({ facts }) => facts !== null);
  const broken = rigs.filter(({ facts }) => facts === null);
  return (
    <fieldset class="compare-pick">
      <legend>Rigs</legend>
      {good.map(({ id, facts }) => (
        <label key={id}>
          <input type="checkbox" checked={!left.has(id)}
            onChange={(event) => onPick(id, event.currentTarget.checked)} />
          <span>{facts?.name}</span>
        </label>
      ))}
      {broken.map(({ id, toml, problem }) => (
        <p key={id} class="soft">
          <b>{writtenName(toml)}</b> is left out, since it cannot be read: {problem?.message} {problem?.remedy}{' '}
          <a href="#rigs">Mend it under Rigs</a>.</p>
      ))}
      {good.every(({ id }) => left.has(id)) && (
        <p role="alert">{good.length > 0 ? 'Pick at least one rig to see its figures.'
          : 'There is no rig to compare. Make one under Rigs.'}</p>
      )}
    </fieldset>
  );
}
