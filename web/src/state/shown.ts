// Numbers for a person, in the units chosen once: the same digits as the command line writes.
// Units and digits come from the engine (its question "about"); nothing is defined here.
import type { AboutAnswer, Band, Shown, UnitChoice } from '../engine/answers';

/** `whole_from`: from here on, in that unit, no digits after the point. */
export type ShownRule = AboutAnswer['shown'][UnitChoice][Shown];

/** A number with so many digits after the point; an exact tie goes to the even digit, as in C. */
export function fixed(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '-';
  const scale = 10 ** digits;
  const scaled = value * scale;
  // Only a multiple of a half to the power of digits + 1 can lie exactly between two.
  const tie = Math.abs(scaled % 1) === 0.5 && Number.isInteger(value * 2 ** (digits + 1));
  const text = tie
    ? ((2 * Math.round(scaled / 2)) / scale).toFixed(digits)
    : value.toFixed(digits);
  return /^-[0.]*$/.test(text) ? text.slice(1) : text;
}

/** How the person wants figures: one set of units for the whole page. */
export class Shower {
  constructor(
    private readonly about: AboutAnswer,
    readonly units: UnitChoice,
  ) {}

  rule(shown: Shown): ShownRule {
    return this.about.shown[this.units][shown];
  }

  unit(shown: Shown): string {
    return this.rule(shown).unit;
  }

  /** A value in the unit in which it is shown. */
  inUnit(si: number, shown: Shown): number {
    return si / this.rule(shown).si;
  }

  fromUnit(value: number, shown: Shown): number {
    return value * this.rule(shown).si;
  }

  private digitsFor(value: number, rule: ShownRule): number {
    return rule.whole_from != null && Math.abs(value) >= rule.whole_from ? 0 : rule.digits;
  }

  /** The number alone: "88". */
  number(si: number, shown: Shown): string {
    const rule = this.rule(shown);
    const value = si / rule.si;
    return fixed(value, this.digitsFor(value, rule));
  }

  /** Number and unit: "88 ft". */
  quantity(si: number, shown: Shown): string {
    return `${this.number(si, shown)} ${this.unit(shown)}`;
  }

  /** The two ends of a band: "84 to 91"; nothing when both look like the median. */
  ends(band: Band, shown: Shown): string | undefined {
    const rule = this.rule(shown);
    const digits = this.digitsFor(band.median / rule.si, rule);
    const [median, low, high] = [band.median, band.low, band.high].map((v) =>
      fixed(v / rule.si, digits));
    return low === median && high === median ? undefined : `${low} to ${high}`;
  }

  /** A band in words: "88 ft, 84 to 91". */
  band(band: Band, shown: Shown): string {
    const ends = this.ends(band, shown);
    const median = this.quantity(band.median, shown);
    return ends === undefined ? median : `${median}, ${ends}`;
  }
}
