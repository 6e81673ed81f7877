import { beforeAll, describe, expect, test } from 'vitest';
import type { VNode } from 'preact';
import { Sheet } from '../../../src/drawing/sheet';
import type { CardAnswer, Drawing } from '../../../src/engine/answers';
import { realEngine } from '../../engine';
import { oneRigger as rig } from '../example_rigs';

type Node = VNode<Record<string, unknown>>;

/** Every element that comes of it, components worked through. */
function elements(node: unknown): Node[] {
  if (Array.isArray(node)) return node.flatMap(elements);
  if (typeof node !== 'object' || node === null || !('type' in node)) return [];
  const vnode = node as Node;
  if (typeof vnode.type === 'function') {
    return elements((vnode.type as (props: unknown) => unknown)(vnode.props));
  }
  return [vnode, ...elements(vnode.props['children'])];
}

let drawing: Drawing;
let drawn: Node[];
beforeAll(async () => {
  const ask = await realEngine();
  const answer = ask({
    question: 'card', rig_toml: rig, bands: false, units: 'feet', sheet: true, date: '2024-05-17' }) as CardAnswer;
  drawing = answer.riggers[0]?.sheet as Drawing;
  drawn = elements(Sheet({ drawing, label: 'The card' }));
});

describe('the sheet', () => {
  test('has every text and line of the engine, in millimetres', () => {
    const texts = drawn.filter(({ type }) => type === 'text');
    expect(texts.map(({ props }) => props['children'])).toEqual(
      drawing.texts.map(({ text }) => text.replace(/^ /, '\u00a0')));
    // What a sentence is about is a text of its own, and the rest begins with a space.
    expect(drawing.texts.some(({ text }) => text.startsWith(' '))).toBe(true);
    expect(texts.some(({ props }) => props['children'] === '2024-05-17')).toBe(true);
    const lines = drawn.filter(({ type }) => type === 'polyline' || type === 'polygon');
    expect(lines).toHaveLength(drawing.lines.length);
    const [first] = texts;
    expect(first?.props).toMatchObject({ x: drawing.texts[0]?.x_mm, 'font-size': drawing.texts[0]?.size_mm });
    expect(drawn[0]?.props).toMatchObject({
      width: `${drawing.width_mm}mm`, viewBox: `0 0 ${drawing.width_mm} ${drawing.height_mm}` });
  });

  test('is black on white in its attributes', () => {
    const colours = new Set(drawn.flatMap(({ props }) => [props['fill'], props['stroke']])
      .filter((colour) => typeof colour === 'string' && colour !== 'none'));
    expect(colours.size).toBeGreaterThan(1);
    for (const colour of colours) expect(colour).toMatch(/^#(..)\1\1$/);
    expect(drawn.find(({ type }) => type === 'rect')?.props).toMatchObject({ fill: '#ffffff' });
  });

  test('fills what is filled and dashes what is dashed', () => {
    const line = { points: [[0, 0], [1, 0], [1, 1]] as [number, number][], width_mm: 0.3, role: 'band' as const,
      closed: true, filled: true, dashed: false };
    const text = { text: 'x', x_mm: 1, y_mm: 2, size_mm: 4, anchor: 'end' as const, bold: true, rotation_deg: 90,
      role: 'ink' as const, halo: true };
    const nodes = elements(Sheet({ label: '', drawing: { title: '', width_mm: 10, height_mm: 10, texts: [text],
      lines: [line, { ...line, closed: false, filled: false, dashed: true }] } }));
    expect(nodes.find(({ type }) => type === 'polygon')?.props).toMatchObject({ fill: '#e3e3e3', points: '0,0 1,0 1,1' });
    expect(nodes.find(({ type }) => type === 'polyline')?.props).toMatchObject({ fill: 'none', 'stroke-dasharray': '1.6 1.1' });
    expect(nodes.find(({ type }) => type === 'text')?.props).toMatchObject({
      'text-anchor': 'end', 'font-weight': 'bold', transform: 'rotate(90 1 2)', 'paint-order': 'stroke' });
  });
});
