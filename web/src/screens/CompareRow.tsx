// The figures of one rigger among those compared.
import type { Band, Shown } from '../engine/answers';
import { useApp } from '../state/app';
import { echo } from '../state/echo';
import { reachEnd } from '../state/words';
import { gainSentence, type Row } from './compare_rows';

export function CompareRow({ row }: { row: Row }) {
  const { shower } = useApp();
  const { figures, rigger, letter, banded } = row;
  const title = `compare-row-${letter}`;
  return (
    <section class="compare-row" aria-labelledby={title}>
      <h2 id={title}><span class="letter">{letter}</span> {figures.name}</h2>
      <p class="soft">{rigger.line.name}; {rigger.ball.name}</p>
      <p class="compare-reach">
        Reaches <span class="digits">{shower.number(figures.reach_depth_m.median, 'depth')}</span>{' '}
        {shower.unit('depth')}{banded && ends(figures.reach_depth_m, 'depth')}</p>
      <p>at a count of {shower.quantity(figures.reach_count_m, 'depth')},{' '}
        {reachEnd(figures.reach_ends_by, rigger.largest_boom_angle_deg, shower)}.</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Count, {shower.unit('depth')}</th>
            <th scope="col">Ball at, {shower.unit('depth')}</th>
            <th scope="col">Pull at the boom, {shower.unit('force')}</th>
          </tr>
        </thead>
        <tbody>
          {figures.counts_m.map((count, i) => (
            <tr key={count}>
              <th scope="row">{echo(shower, count, 'depth').split(' ')[0]}</th>
              <Place band={figures.depth_m[i] ?? null} shown="depth" />
              <Place band={figures.tension_boom_N[i] ?? null} shown="force" />
            </tr>
          ))}
        </tbody>
      </table>
      {figures.gains.length > 0 && (
        <>
          <h3>At a count of {echo(shower, figures.gains_count_m, 'depth')}</h3>
          <ul>{figures.gains.map((gain) => <li key={gain.what}>{gainSentence(gain, shower)}</li>)}</ul>
        </>
      )}
    </section>
  );

  function ends(band: Band, shown: Shown): string {
    const words = shower.ends(band, shown);
    return words === undefined ? '' : `, ${words}`;
  }

  function Place({ band, shown }: { band: Band | null; shown: Shown }) {
    if (!band) return <td>–</td>;
    return (
      <td><span class="median">{shower.number(band.median, shown)}</span>
        <span class="ends">{banded ? shower.ends(band, shown) ?? '' : '…'}</span></td>
    );
  }
}
