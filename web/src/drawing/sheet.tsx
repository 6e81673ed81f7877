// A sheet of paper as the engine laid it out, black on white. Its colours are attributes, so that the
// drawing is whole when it is printed or saved; a screen's own style may lay others over them.
import type { Drawing, Role } from '../engine/answers';

/** Black on white, for a printer that knows no colour. */
const PRINTED: Record<Role, string> = {
  paper: '#ffffff', ink: '#000000', accent: '#000000', faint: '#808080', band: '#e3e3e3', water: '#4d4d4d',
};
/** The sheets are laid out for the first; the others are as wide or narrower. */
const LETTERS = 'DejaVu Sans, Verdana, Arial, sans-serif';
/** Width of the paper edge around a letter that stands on a line, over its em. */
const HALO = 0.35;
const DASHES = '1.6 1.1';

/** A space at the end of a text is part of it, but would be left out. */
function kept(text: string): string {
  return text.replace(/^ +| +$/g, (spaces) => '\u00a0'.repeat(spaces.length));
}

type Line = Drawing['lines'][number];
type Text = Drawing['texts'][number];

function SheetLine({ line }: { line: Line }) {
  const points = line.points.map(([x, y]) => `${x},${y}`).join(' ');
  const colour = PRINTED[line.role];
  const Shape = line.closed || line.filled ? 'polygon' : 'polyline';
  if (line.filled) return <Shape class={`area ${line.role}`} points={points} fill={colour} />;
  return (
    <Shape class={`line ${line.role}`} points={points} fill="none" stroke={colour}
      stroke-width={line.width_mm} {...(line.dashed ? { 'stroke-dasharray': DASHES } : {})} />
  );
}

function SheetText({ text }: { text: Text }) {
  const edge = text.halo
    ? { stroke: PRINTED.paper, 'stroke-width': HALO * text.size_mm, 'paint-order': 'stroke' } : {};
  const turn = text.rotation_deg === 0 ? {}
    : { transform: `rotate(${text.rotation_deg} ${text.x_mm} ${text.y_mm})` };
  return (
    <text class={`text ${text.role}`} x={text.x_mm} y={text.y_mm} font-size={text.size_mm}
      text-anchor={text.anchor} font-weight={text.bold ? 'bold' : 'normal'} fill={PRINTED[text.role]}
      {...edge} {...turn}>{kept(text.text)}</text>
  );
}

export function Sheet({ drawing, label }: { drawing: Drawing; label: string }) {
  const { width_mm, height_mm } = drawing;
  return (
    <svg xmlns="http://www.w3.org/2000/svg" width={`${width_mm}mm`} height={`${height_mm}mm`}
      viewBox={`0 0 ${width_mm} ${height_mm}`} role="img" aria-label={label} font-family={LETTERS}
      stroke-linecap="round" stroke-linejoin="round">
      <title>{drawing.title}</title>
      <rect class="area paper" width={width_mm} height={height_mm} fill={PRINTED.paper} />
      {drawing.lines.map((line, i) => <SheetLine key={`l${i}`} line={line} />)}
      {drawing.texts.map((text, i) => <SheetText key={`t${i}`} text={text} />)}
    </svg>
  );
}

/** The drawing as the text of an SVG file. */
export function sheetFile(svg: SVGSVGElement): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(svg)}\n`;
}
