// The engine's catalogue, sorted for the fields of a form: a line by construction and diameter, a ball
// by shape and weight.
import type { AboutAnswer } from '../../engine/answers';

export type Catalogue = AboutAnswer['catalogue'];

export interface Choice {
  id: string;
  name: string;
}

const LINE = /^(.+)-(\d+(?:\.\d+)?)mm$/;
const BALL = /^ball-([a-z]+)-(\d+(?:\.\d+)?)(lb|kg)$/;

/** "wire-7x7" and "0.84 mm" of "wire-7x7-0.84mm"; a construction alone has no diameter. */
export function splitLine(id: string): { construction: string; diameter: string } {
  const match = LINE.exec(id);
  return match ? { construction: match[1] ?? '', diameter: `${match[2]} mm` } : { construction: id, diameter: '' };
}

/** "finned" and "15 lb" of "ball-finned-15lb". */
export function splitBall(id: string): { shape: string; weight: string } | undefined {
  const match = BALL.exec(id);
  return match ? { shape: match[1] ?? '', weight: `${match[2]} ${match[3]}` } : undefined;
}

/** Each construction of line once, in the catalogue's order: "7-strand stainless wire". */
export function constructions({ lines }: Catalogue): Choice[] {
  const found = new Map<string, string>();
  for (const { id, name } of lines) {
    const { construction } = splitLine(id);
    if (!found.has(construction)) found.set(construction, name.replace(/, [\d.]+ mm$/, ''));
  }
  return [...found].map(([id, name]) => ({ id, name }));
}

/** The diameters in which a construction is listed. */
export function diameters({ lines }: Catalogue, construction: string): string[] {
  return lines.map(({ id }) => splitLine(id))
    .filter((line) => line.construction === construction && line.diameter)
    .map((line) => line.diameter);
}

export function shapes({ balls }: Catalogue): string[] {
  return [...new Set(balls.flatMap(({ id }) => splitBall(id)?.shape ?? []))];
}

export function ballWeights({ balls }: Catalogue): string[] {
  return [...new Set(balls.flatMap(({ id }) => splitBall(id)?.weight ?? []))];
}
