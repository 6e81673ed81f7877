// A rig in a line of words.
import type { RigFacts } from '../../engine/answers';

type Rigger = RigFacts['riggers'][number];
type Clip = Rigger['clips'][number];

/** "rotating flasher, 11 in" within a line of words. */
function within(name: string): string {
  return name.replace(/, /g, ' ');
}

function clipWords({ flasher, lure }: Clip): string {
  return flasher ? `${within(flasher)} and ${within(lure)}` : within(lure);
}

/** "12 lb lead ball on 7-strand stainless wire 0.80 mm; rotating flasher 11 in and hoochie 4 in". */
export function riggerWords({ ball, line, clips }: Rigger): string {
  const tackle = clips.length === 0 ? 'no clip' : clips.map(clipWords).join('; above it ');
  return `${within(ball.name)} on ${within(line.name)}; ${tackle}`;
}
