// What a typed text means in a document: a quantity keeps its letters, a bare number takes the unit that
// stands beside the field, a coefficient is a number.
import type { DocumentValue } from '../../engine/answers';

const BARE = /^\s*[+-]?(\d+\.?\d*|\.\d+)\s*$/;
const WITH_UNIT = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)\s*([^\d\s.].*?)\s*$/;

export function isBare(text: string): boolean {
  return BARE.test(text);
}

/** "ft" of "20 ft"; nothing where there is no number with a unit. */
export function unitIn(text: string): string | undefined {
  return WITH_UNIT.exec(text)?.[1];
}

export function quantityMeant(text: string, unit: string): string {
  return isBare(text) ? `${text.trim()} ${unit}` : text;
}

/** A number where it is one; else the text, about which the engine says what it thinks. */
export function numberMeant(text: string): DocumentValue {
  const value = Number(text);
  return text.trim() !== '' && Number.isFinite(value) ? value : text;
}
