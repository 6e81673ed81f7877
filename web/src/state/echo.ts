// What a person gave, with the digits it was given in: "2.75 mph", as the command line repeats it.
import type { Shown } from '../engine/answers';
import type { Shower } from './shown';

const DIGITS = 4;

export function echoNumber(shower: Shower, si: number, shown: Shown): string {
  return String(Number(shower.inUnit(si, shown).toPrecision(DIGITS)));
}

/** The same, with at least the digits that such figures have here: "2.0", "2.75". */
export function headNumber(shower: Shower, si: number, shown: Shown): string {
  const [given, usual] = [echoNumber(shower, si, shown), shower.number(si, shown)];
  return Number(given) === Number(usual) ? usual : given;
}

export function echo(shower: Shower, si: number, shown: Shown): string {
  return `${echoNumber(shower, si, shown)} ${shower.unit(shown)}`;
}
