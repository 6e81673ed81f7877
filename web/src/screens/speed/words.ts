// What the Speed screen says in words.
import type { PhoneSpeed } from '../../phone/phone_speed';
import { ageWords } from '../../phone/age';
import { ROUGH_M } from '../../phone/readings';
import type { Shower } from '../../state/shown';
import type { Surface } from './use_current';
import type { LegSoFar } from './leg_recorder';
import { SILENT_S, TURNING_DEG } from './leg_recorder';
import type { KeptLeg } from './legs';

/** "034°", as a compass is read. */
export function bearing(deg: number): string {
  return `${String(((Math.round(deg) % 360) + 360) % 360).padStart(3, '0')}°`;
}

const POINTS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'];

export function compassPoint(deg: number): string {
  return POINTS[((Math.round(deg / 45) % 8) + 8) % 8] ?? '';
}

const ROUGH = `The place is known to no better than ${ROUGH_M} m, too rough for a speed. A phone under ` +
  'open sky does better.';

/** What stands beside the switch. */
export function phoneWords(speed: PhoneSpeed, used: boolean): string {
  if (speed.watch === 'missing') return 'This browser gives no speed. Set it by hand below.';
  if (!used) return 'Off: the speed is set by hand.';
  switch (speed.watch) {
    case 'refused':
      return 'Refused. Allow location for this page in the browser’s settings, then switch this off and on.';
    case 'nothing': return 'No fix yet: the phone needs a clear view of the sky. By hand until then.';
    case 'silent': return speed.fresh === 'lost'
      ? 'The fix is lost. The speed set by hand is used until it is back.'
      : 'The phone is silent. Its last speed is still used.';
    case 'fixing': if (speed.rough) return ROUGH;
      return speed.fresh === 'none' ? 'Fixes come; the speed settles.' : 'On.';
    default: return 'Waiting for the first fix. It may take a minute.';
  }
}

/** "2 s ago, give or take 0.1 mph". */
export function ageAndAccuracy(age_ms: number, accuracy_mps: number | undefined, shower: Shower): string {
  const age = age_ms < 1000 ? 'just now' : `${ageWords(age_ms)} ago`;
  if (accuracy_mps === undefined) return age;
  const { si, digits } = shower.rule('speed');
  const least = 10 ** -digits;
  const shown = Math.max(accuracy_mps / si, least) * si;
  return `${age}, give or take ${shower.quantity(shown, 'speed')}`;
}

function amount(mps: number, shower: Shower): string | undefined {
  const number = shower.number(Math.abs(mps), 'speed');
  return Number(number) === 0 ? undefined : `${number} ${shower.unit('speed')}`;
}

/** "0.4 mph against me, 0.1 mph to port". */
export function surfaceWords({ along_mps, across_mps }: Surface, shower: Shower): string {
  const along = amount(along_mps, shower);
  const across = amount(across_mps, shower);
  const parts = [
    along && `${along} ${along_mps > 0 ? 'with me' : 'against me'}`,
    across && `${across} to ${across_mps > 0 ? 'starboard' : 'port'}`,
  ].filter(Boolean);
  return parts.length ? parts.join(', ') : 'none';
}

/** What to mind while a leg is recorded: as read, and as said once aloud. */
export interface Trouble {
  words: string;
  aloud: string;
}

export function legTrouble(soFar: LegSoFar, watch: PhoneSpeed['watch']): Trouble | undefined {
  if (watch === 'refused' || watch === 'missing') {
    return same('The phone gives no speed here. Stop, and type the leg by hand.');
  }
  if (soFar.silent_s > SILENT_S) return silence(soFar);
  if (soFar.swing_deg > TURNING_DEG) {
    return same('The course swings: the boat turns, or the heading is not held.');
  }
  return undefined;
}

function silence({ seconds, silent_s }: LegSoFar): Trouble {
  const silent = ageWords(1000 * silent_s);
  if (seconds === 0) {
    const rest = 'The leg begins with the first fix.';
    return { words: `No fix yet, for ${silent}. ${rest}`, aloud: `No fix yet. ${rest}` };
  }
  const rest = 'It goes on when the fix is back: hold the heading.';
  return {
    words: `No fix for ${silent}. The leg keeps its ${ageWords(1000 * seconds)}. ${rest}`,
    aloud: `The fix is lost. The leg keeps what it has. ${rest}`,
  };
}

function same(words: string): Trouble {
  return { words, aloud: words };
}

/** "2.4 mph at 214°". */
export function legFigures(leg: { ground_speed_mps: number; course_deg: number }, shower: Shower): string {
  return `${shower.quantity(leg.ground_speed_mps, 'speed')} at ${bearing(leg.course_deg)}`;
}

/** "75 s, scatter 0.1 mph. A gap of 12 s is left out." */
export function legBasis(leg: KeptLeg, shower: Shower): string {
  const held = ageWords(1000 * leg.seconds);
  if (leg.by === 'hand') return `typed, held ${held}`;
  const { si, digits } = shower.rule('speed');
  const spread = leg.spread_mps ?? 0;
  const scatter = spread / si < 0.5 * 10 ** -digits
    ? `under ${shower.quantity(si * 10 ** -digits, 'speed')}` : shower.quantity(spread, 'speed');
  const gap = leg.left_out_s >= 1
    ? ` The fix was lost on the way: a gap of ${ageWords(1000 * leg.left_out_s)} is left out.` : '';
  return `held ${held}, scatter ${scatter}.${gap}`;
}
