/** Line drawings of a pack, as read from its SVG files: nothing in them that the reader does not know. */

export interface DrawingElement {
  name: string;
  attributes: Readonly<Record<string, string>>;
  children: readonly (DrawingElement | string)[];
}

/** A named part of a drawing, and where a mark is put on it. */
export interface DrawingPart {
  id: string;
  name: string;
  at: readonly [x: number, y: number];
}

export interface Drawing {
  id: string;
  title: string;
  /** What is seen, for somebody who cannot see it; it names no part by what it does, since questions may ask for that. */
  description: string;
  width: number;
  height: number;
  parts: readonly DrawingPart[];
  body: readonly DrawingElement[];
}

/** A lettered mark on a drawing. */
export interface DrawingMark {
  letter: string;
  at: readonly [x: number, y: number];
  look: 'plain' | 'yes' | 'no';
  /** The id of the control that a click on the mark chooses; null where nothing is to be chosen. */
  chooses: string | null;
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => escapes[sign] ?? '');

/** Half the width of a mark, in the drawing's own units: wide enough for a finger where 480 units stand in 288 pixels. */
const markRadius = 21;

/**
 * The drawing as SVG to be put into a page.
 * @param named false leaves out the names of parts, in print and for screen readers, for questions that ask for them
 * @param prefix makes the ids of this drawing its own on the page
 */
export function drawingSvg(
  drawing: Drawing,
  { named, marks, prefix }: { named: boolean; marks: readonly DrawingMark[]; prefix: string },
): string {
  const { width, height, title, description } = drawing;
  const [titleId, descriptionId] = [`${prefix}-title`, `${prefix}-description`];
  const body = drawing.body.map((element) => elementSvg(element, named)).join('');
  return (
    `<svg class="drawn" viewBox="0 0 ${width} ${height}" width="${width}" role="img" aria-labelledby="${titleId}" aria-describedby="${descriptionId}">` +
    `<title id="${titleId}">${escaped(title)}</title><desc id="${descriptionId}">${escaped(description)}</desc>` +
    `${body}${marks.map(markSvg).join('')}</svg>`
  );
}

function elementSvg(element: DrawingElement, named: boolean): string {
  const { name, attributes, children } = element;
  if (!named && (name === 'title' || name === 'desc' || attributes['class']?.split(' ').includes('name'))) return '';
  const written = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escaped(value)}"`)
    .join('');
  const inner = children.map((child) => (typeof child === 'string' ? escaped(child) : elementSvg(child, named))).join('');
  return inner === '' ? `<${name}${written}/>` : `<${name}${written}>${inner}</${name}>`;
}

/** HTML inside the drawing, so that a click reaches the control without a script. */
function markSvg({ letter, at: [x, y], look, chooses }: DrawingMark): string {
  const size = 2 * markRadius;
  if (chooses === null) {
    const circle = `<circle cx="${x}" cy="${y}" r="${markRadius - 3}"/>`;
    return `<g class="mark ${look}" aria-hidden="true">${circle}<text x="${x}" y="${y}" dy="0.36em">${escaped(letter)}</text></g>`;
  }
  const box = `x="${x - markRadius}" y="${y - markRadius}" width="${size}" height="${size}"`;
  return `<foreignObject ${box} aria-hidden="true"><label class="mark" for="${escaped(chooses)}">${escaped(letter)}</label></foreignObject>`;
}
