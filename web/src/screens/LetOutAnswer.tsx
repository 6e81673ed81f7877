// The answer for one rigger: the count in the largest digits there are, or why there is none.
import type { CountAnswer, RigFacts, RiggerCount } from '../engine/answers';
import { useApp, type App, type AppState } from '../state/app';
import { FULL, type Chased } from '../state/chase';
import { useStore } from '../state/store';
import {
  bandWords, leanWords, NO_REMEDY, reachWords, refusal, remedySentence, restOfGear,
} from './let_out_words';

type RiggerFacts = RigFacts['riggers'][number];

interface Props {
  rigger: RiggerFacts;
  chased: Chased<CountAnswer> | undefined;
  alone: boolean;
  chosen: boolean;
  /** The depth asked for, with its unit. */
  wanted: string;
}

export function LetOutAnswer({ rigger, chased, alone, chosen, wanted }: Props) {
  const app = useApp();
  const count = chased?.answer?.riggers[0];
  return (
    <div class="let-out-rigger" aria-label={rigger.name} role="group">
      {!alone && (
        <button type="button" class={chosen ? 'button chosen' : 'button'} aria-pressed={chosen}
          onClick={() => app.changeHand({ rigger: rigger.name })}>{rigger.name}</button>
      )}
      {chased?.problem && (
        <p class="wrong" role="alert">{chased.problem.message} {chased.problem.remedy}
          {count?.count_m && !chased.current && ' Below stands the last that could be worked out.'}</p>
      )}
      {count && (count.count_m
        ? <Reached rigger={rigger} count={count} chased={chased} alone={alone} />
        : <OutOfReach rigger={rigger} count={count} wanted={wanted} alone={alone} />)}
    </div>
  );
}

function Reached({ rigger, count, chased, alone }: {
  rigger: RiggerFacts; count: RiggerCount; chased: Chased<CountAnswer> | undefined; alone: boolean;
}) {
  const { shower } = useApp();
  const median = count.count_m?.median ?? 0;
  const stale = Boolean(chased?.problem) && !chased?.current;
  const number = shower.number(median, 'depth');
  const classes = ['let-out-digits', stale ? 'stale' : '', number.length > 3 ? 'long' : ''];
  return (
    <>
      <p class={classes.join(' ')}>
        <span class="visually-hidden">Let out </span>
        {number}<span class="unit"> {shower.unit('depth')}</span>
      </p>
      <p class="let-out-band">{bandNow(count, chased)}</p>
      <div class="let-out-rest">
        <dl class="let-out-there">
          {restOfGear(count, rigger, shower).map(({ name, words, deeper }) => (
            <div key={name}><dt>{name}</dt><dd>{words}{deeper && <b>: mind the bottom</b>}</dd></div>
          ))}
          <div><dt>Line leans</dt><dd>{leanWords(count, shower)}{alone && ' at the boom'}</dd></div>
        </dl>
        <SetCount rigger={rigger.name} median_m={median} stale={stale} />
      </div>
    </>
  );

  function bandNow(now: RiggerCount, known: Chased<CountAnswer> | undefined): string {
    if (!known?.current || known.draws === 0) {
      return known?.problem ? ' ' : 'working out the band …';
    }
    const words = bandWords(now, shower) ?? 'the band is narrower than the digits';
    return known.draws < FULL ? `about ${words} …` : words;
  }
}

function OutOfReach({ rigger, count, wanted, alone }: {
  rigger: RiggerFacts; count: RiggerCount; wanted: string; alone: boolean;
}) {
  const { shower } = useApp();
  return (
    <div class="let-out-refused">
      <p class="let-out-no">{refusal(count, rigger, wanted)}</p>
      <p>{reachWords(count, rigger, shower)}</p>
      {count.remedies.length === 0 ? <p>{NO_REMEDY}</p> : (
        <>
          {alone && <p>Everything else left as it is:</p>}
          <ul>
            {count.remedies.map((remedy) => <li key={remedy.what}>{remedySentence(remedy)}</li>)}
          </ul>
        </>
      )}
    </div>
  );
}

const countsOf = (state: AppState) => state.hand.counts_m;

/** Takes the count, as it is written here, over to the first screen. */
function SetCount({ rigger, median_m, stale }: { rigger: string; median_m: number; stale: boolean }) {
  const app = useApp();
  const { shower } = app;
  const before = useStore(app.state, countsOf)[rigger];
  const now = before === undefined ? '' : `now ${shower.quantity(before, 'depth')}`;
  return (
    <button type="button" class="button first let-out-set" disabled={stale}
      onClick={() => setCount(app, rigger, median_m)}>
      Set this count<span>{now}</span>
    </button>
  );
}

function setCount(app: App, rigger: string, median_m: number): void {
  const { shower } = app;
  const written = Number(shower.number(median_m, 'depth'));
  const before = app.state.get().hand.counts_m[rigger];
  const put = (count_m: number | undefined): void => {
    if (count_m === undefined) return;
    app.changeHand({ counts_m: { ...app.state.get().hand.counts_m, [rigger]: count_m } });
  };
  put(shower.fromUnit(written, 'depth'));
  app.say(`The line of ${rigger} is set to ${shower.quantity(median_m, 'depth')}.`, () => put(before));
}
