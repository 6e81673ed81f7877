// The card as a table that scrolls within its own frame; counts and speeds stay in sight.
import type { CardAnswer } from '../engine/answers';
import { useApp } from '../state/app';
import { headNumber } from '../state/echo';
import type { Cell } from './card_cells';

interface Props {
  answer: CardAnswer;
  /** By speed, then by count. */
  grid: Cell[][];
  banded: boolean;
  title: string;
  largest_angle_deg: number;
}

export function CardTable({ answer, grid, banded, title, largest_angle_deg }: Props) {
  const { shower } = useApp();
  const cells = grid.flat();
  const angle = shower.quantity((largest_angle_deg * Math.PI) / 180, 'angle');
  return (
    <>
      <h2 id="card-table-title">{title}</h2>
      <div class="card-frame" role="region" aria-labelledby="card-table-title" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col" class="corner">count<br />{shower.unit('depth')}</th>
              {answer.speeds_mps.map((speed) => (
                <th key={speed} scope="col">{headNumber(shower, speed, 'speed')}
                  <span class="unit">{shower.unit('speed')}</span></th>
              ))}
            </tr>
          </thead>
          <tbody>
            {answer.counts_m.map((count, row) => (
              <tr key={count}>
                <th scope="row">{headNumber(shower, count, 'depth')}</th>
                {grid.map((column, i) => (
                  <Place key={answer.speeds_mps[i]} cell={column[row] ?? 'no place'} banded={banded} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {cells.includes('leans') && (
        <p class="card-key"><b>leans</b>: the line would lean more than {angle} at the boom, the most this rig
          allows. Go slower, or hang a heavier ball.</p>
      )}
      {cells.includes('no place') && (
        <p class="card-key"><b>no place</b>: a clip would be above the water, or the gear finds no steady
          place.</p>
      )}
    </>
  );
}

function Place({ cell, banded }: { cell: Cell; banded: boolean }) {
  const { shower } = useApp();
  if (typeof cell === 'string') return <td class="none">–<span>{cell}</span></td>;
  const ends = banded ? shower.ends(cell, 'depth') ?? '' : '…';
  return <td>{shower.number(cell.median, 'depth')}<span>{ends}</span></td>;
}
