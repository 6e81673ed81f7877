// Rigs side by side: how deep, with what pull, and what a small change buys.
import { useState } from 'preact/hooks';
import type { CompareAnswer } from '../engine/answers';
import type { CompareRequest } from '../engine/requests';
import { SpeedRuler } from '../parts/hands';
import { Cautions, Notes } from '../parts/Remarks';
import { SeriesField } from '../parts/SeriesField';
import { useApp, type AppState, type GoodRig } from '../state/app';
import { FULL_ONLY, NO_BANDS, useChase, working, type Chased, type Wishes } from '../state/chase';
import { seaOf } from '../state/sea';
import { useStore } from '../state/store';
import { CompareDrawing } from './CompareDrawing';
import { ComparePick } from './ComparePick';
import { CompareRow } from './CompareRow';
import { curveCounts, rowsOf } from './compare_rows';
import './compare.css';

const whole = (state: AppState) => state;

/** One question a rig, so that another one more or less leaves the others standing. */
function wishesFor(rigs: GoodRig[], { hand, ground, settings }: AppState,
  countsFor: (rig: GoodRig) => number[] | null): Wishes<CompareRequest> {
  const sea = seaOf(hand, ground && { ...ground, course_deg: null });
  return rigs.map((rig) => [rig.id, {
    question: 'compare', rigs_toml: [rig.toml], counts_m: countsFor(rig), ...sea, bands: true,
    units: settings.units,
  }]);
}

export function Compare() {
  const { about } = useApp();
  const state = useStore(useApp().state, whole);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [counts_m, setCounts] = useState<number[] | null>(null);
  const good = state.rigs.filter((rig): rig is GoodRig => rig.facts !== null);
  const picked = good.filter(({ id }) => !left.has(id));

  const view = useChase<CompareRequest>(wishesFor(picked, state, () => counts_m), FULL_ONLY);
  const answers = picked.flatMap(({ id }) => view.get(id)?.answer ?? []);
  const compared_m = answers[0]?.rigs[0]?.counts_m ?? [];
  const deepest_m = compared_m.at(-1);
  const curves = useChase<CompareRequest>(
    deepest_m === undefined ? [] : wishesFor(picked, state, (rig) => curveCounts(rig.facts, deepest_m)),
    NO_BANDS);
  const rows = rowsOf(picked, view, curves);
  const longest_m = Math.max(0, ...picked.flatMap(({ facts }) =>
    facts.riggers.map(({ line_on_reel_m }) => line_on_reel_m)));

  const put = (id: string, on: boolean): void => {
    const next = new Set(left);
    if (on) next.delete(id);
    else next.add(id);
    setLeft(next);
  };
  return (
    <section class="screen compare" aria-labelledby="compare-title" aria-busy={working(view)}>
      <h1 id="compare-title">Compare</h1>
      <div class="compare-hands"><SpeedRuler /></div>
      <ComparePick rigs={state.rigs} left={left} onPick={put} />
      <div class="compare-mind">
        <Cautions lines={unique(answers.flatMap((answer) => answer.cautions)).slice(0, 1)} />
        <Troubles picked={picked} view={view} />
      </div>
      {rows.length > 0 && <CompareDrawing rows={rows} deepest_m={deepest_m ?? 0} />}
      <p class="compare-status" role="status">
        {picked.length > 0 && (working(view) ? 'Working out the bands …'
          : 'After each figure its band: 9 times in 10 it is within.')}
      </p>
      <div class="compare-rows">
        {rows.map((row) => <CompareRow key={row.key} row={row} />)}
      </div>
      {compared_m.length > 0 && (
        <div class="compare-counts">
          <SeriesField name="Counts" values={compared_m} shown="depth" dimension="length" low={0}
            high={longest_m || about.limits.largest_count_m} onSet={setCounts}
            onUsual={counts_m ? () => setCounts(null) : undefined} />
        </div>
      )}
      <section class="compare-what-if" aria-labelledby="compare-what-if">
        <h2 id="compare-what-if">What if …</h2>
        <p>… the ball were heavier, the line thinner, the flasher another? Copy a rig under{' '}
          <a href="#rigs">Rigs</a>, change it there, and it stands here beside the first.</p>
        <p class="soft">Each rig has the ball that is written in it. The ball ruler of the other screens has
          no say here.</p>
      </section>
      <div class="compare-foot">
        <Cautions lines={unique(answers.flatMap((answer) => answer.cautions)).slice(1)} />
        <Notes lines={unique(answers.flatMap((answer) => answer.notes))} />
      </div>
    </section>
  );
}

function Troubles({ picked, view }: { picked: GoodRig[]; view: Map<string, Chased<CompareAnswer>> }) {
  return (
    <>
      {picked.map(({ id, facts }) => {
        const chased = view.get(id);
        if (!chased?.problem) return null;
        return (
          <p key={id} class="wrong" role="alert">{facts.name}: {chased.problem.message} {chased.problem.remedy}
            {chased.answer && !chased.current && ' Its figures below are the last that could be worked out.'}</p>
        );
      })}
    </>
  );
}

function unique(lines: string[]): string[] {
  return [...new Set(lines)];
}
