// What the two legs say: the current, the speed through the water, the log's error; and the way into
// what is in hand.
import { useEffect, useRef, useState } from 'preact/hooks';
import { isProblem } from '../../engine/desk';
import type { Problem, TwoWayAnswer } from '../../engine/answers';
import { Figure } from '../../parts/Figure';
import { FoldedCautions, Notes } from '../../parts/Remarks';
import { useApp, type AppState } from '../../state/app';
import { useStore } from '../../state/store';
import { requestOf, type Legs } from './legs';
import { UseCurrent } from './UseCurrent';
import { bearing, compassPoint } from './words';

const unitsOf = (state: AppState) => state.settings.units;

interface Answered {
  answer: TwoWayAnswer | undefined;
  problem: Problem | undefined;
}

/** Asked anew whenever a leg changes; the last good answer stays while the legs are at fault. */
function useAnswer(legs: Legs): Answered {
  const { desk, state } = useApp();
  const units = useStore(state, unitsOf);
  const [answered, setAnswered] = useState<Answered>({ answer: undefined, problem: undefined });
  useEffect(() => {
    const request = requestOf(legs, units);
    if (!request) {
      setAnswered({ answer: undefined, problem: undefined });
      return undefined;
    }
    let wanted = true;
    void desk.ask(request).then((outcome) => {
      if (!wanted) return;
      setAnswered((before) => (isProblem(outcome) ? { ...before, problem: outcome.problem }
        : { answer: outcome, problem: undefined }));
    });
    return () => { wanted = false; };
  }, [legs, units]);
  return answered;
}

export function Found({ legs }: { legs: Legs }) {
  const { answer, problem } = useAnswer(legs);
  const box = useRef<HTMLDivElement>(null);
  // The answer to a run just ended is brought into sight; one that was there already is not.
  const complete = legs.every((leg) => leg !== null);
  const wasComplete = useRef(complete);
  const answered = answer !== undefined || problem !== undefined;
  useEffect(() => {
    if (!complete) wasComplete.current = false;
    if (!complete || !answered || wasComplete.current) return;
    wasComplete.current = true;
    box.current?.scrollIntoView({ block: 'start' });
  }, [complete, answered]);
  return (
    <div class="found" ref={box}>
      {answer && <FoldedCautions lines={answer.cautions} />}
      {problem && (
        <p class="wrong" role="alert">{problem.message} {problem.remedy}
          {answer && ' Below stands what the legs said before.'}</p>
      )}
      {answer && <Figures answer={answer} />}
      {answer && !problem && <UseCurrent answer={answer} />}
      {answer && <Notes lines={answer.notes} />}
    </div>
  );
}

function Figures({ answer }: { answer: TwoWayAnswer }) {
  const { shower } = useApp();
  const { current, water_speed_mps, log } = answer;
  const toward = current.toward_deg;
  const open = toward.high - toward.low >= 359;
  const towardWords = open ? 'which way is open'
    : `toward ${bearing(toward.median)} ${compassPoint(toward.median)}, ` +
      `${bearing(toward.low)} to ${bearing(toward.high)}`;
  return (
    <div class="figures" aria-live="polite">
      <Figure name="Current at the top" value={current.speed_mps} shown="speed" shower={shower}
        below={[shower.ends(current.speed_mps, 'speed'), towardWords].filter(Boolean).join('; ')} />
      <Figure name="Through the water, both legs" value={water_speed_mps} shown="speed" shower={shower} />
      {log && (
        <Figure shown="speed" shower={shower}
          name={log.error_mps.median < 0 ? 'The log reads low by' : 'The log reads high by'}
          value={log.error_mps.median < 0 ? turned(log.error_mps) : log.error_mps}
          below={`${shower.ends(log.error_mps.median < 0 ? turned(log.error_mps) : log.error_mps, 'speed')
            ?? ''}; take ${log.factor.median.toFixed(2)} of what it reads`} />
      )}
    </div>
  );
}

function turned({ median, low, high }: { median: number; low: number; high: number }) {
  return { median: -median, low: -high, high: -low };
}
