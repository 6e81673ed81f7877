// Making and changing SVG elements without a detour: the live drawing changes each frame.

const NS = 'http://www.w3.org/2000/svg';

export type Attributes = Record<string, string | number>;

export function make<K extends keyof SVGElementTagNameMap>(
  parent: Element, tag: K, attributes: Attributes = {}): SVGElementTagNameMap[K] {
  const element = document.createElementNS(NS, tag);
  put(element, attributes);
  parent.append(element);
  return element;
}

export function put(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    const text = typeof value === 'number' ? value.toFixed(1) : value;
    if (element.getAttribute(name) !== text) element.setAttribute(name, text);
  }
}

/** Moves it there: quicker than new coordinates, after which a text would be set anew. */
export function place(element: Element, x: number, y: number): void {
  put(element, { transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` });
}

/** Changes the text that is there: another in its place would have to be styled anew. */
export function say(element: Element, text: string): void {
  const node = element.firstChild;
  if (!(node instanceof Text)) element.textContent = text;
  else if (node.data !== text) node.data = text;
}

export function show(element: SVGElement, visible: boolean): void {
  const display = visible ? '' : 'none';
  if (element.style.display !== display) element.style.setProperty('display', display);
}
