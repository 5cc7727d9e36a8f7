import { SaxesParser, type SaxesTagPlain } from 'saxes';
import type { Drawing, DrawingElement, DrawingPart } from '../../core/drawing.js';
import type { Position } from '../read-yaml.js';
import { decodeText } from '../yaml/text.js';
import { attributeFault, drawingLimits, elements } from './allowed.js';

export interface SvgFault extends Position {
  rule: 'drawing-unsafe' | 'drawing-shape' | 'drawing-too-large';
  message: string;
}

export interface SvgReading {
  /** Null when there is any fault. */
  drawing: Drawing | null;
  faults: SvgFault[];
}

interface Node extends DrawingElement {
  attributes: Record<string, string>;
  children: (Node | string)[];
  part: { id: string; at: [number, number] } | null;
}

/** Faults told of one drawing: after that the rest is mostly echo. */
const mostFaults = 20;

/**
 * Reads a drawing from the bytes of an SVG file. Never throws. It is parsed as XML without entities or a document type, and rebuilt
 * from the elements and attributes of `allowed.ts`; nothing of the file itself reaches a page.
 * @param id the file's name without its ending
 */
export function readSvg(id: string, bytes: Uint8Array): SvgReading {
  if (bytes.length > drawingLimits.bytes) {
    const message = `The drawing has ${bytes.length} bytes, and ${drawingLimits.bytes} are allowed. Take out what is not seen, and round the numbers.`;
    return { drawing: null, faults: [{ rule: 'drawing-too-large', line: 1, column: 1, message }] };
  }
  const { text, faults, placeAt } = decodeText(bytes);
  if (text === null || faults.length > 0)
    return { drawing: null, faults: faults.map(({ offset, message }) => ({ rule: 'drawing-shape', message, ...placeAt(offset) })) };
  const reader = new SvgReader();
  reader.read(text);
  if (reader.faults.length > 0 || reader.root === null) return { drawing: null, faults: reader.faults };
  return drawingOf(id, reader.root, reader.viewBox);
}

class SvgReader {
  root: Node | null = null;
  viewBox = '';
  readonly faults: SvgFault[] = [];
  private readonly open: Node[] = [];
  private count = 0;
  private stopped = false;
  private readonly parser = new SaxesParser<{ position: true; xmlns: false }>({ position: true, xmlns: false });

  read(text: string): void {
    const { parser } = this;
    parser.on('error', (error) => this.stop('drawing-shape', `This is not well-formed XML: ${error.message.replace(/^\d+:\d+: /, '')}`));
    parser.on('doctype', () => this.stop('drawing-unsafe', 'A drawing has no document type. Delete the line that begins with <!DOCTYPE.'));
    parser.on('processinginstruction', () =>
      this.fault('drawing-unsafe', 'A drawing has no instructions of the form <?…?>. Delete this one.'),
    );
    parser.on('cdata', () => this.fault('drawing-unsafe', 'Write the text as it is, without <![CDATA[.'));
    parser.on('opentag', (tag) => this.opened(tag));
    parser.on('text', (words) => this.words(words));
    parser.on('closetag', () => this.closed());
    try {
      parser.write(text).close();
    } catch {
      this.stop('drawing-shape', 'This is not well-formed XML.');
    }
    if (this.root === null) this.fault('drawing-shape', 'There is no <svg> in this file.');
  }

  private fault(rule: SvgFault['rule'], message: string): void {
    if (this.stopped || this.faults.length >= mostFaults) return;
    this.faults.push({ rule, line: this.parser.line, column: Math.max(1, this.parser.column), message });
  }

  private stop(rule: SvgFault['rule'], message: string): void {
    this.fault(rule, message);
    this.stopped = true;
  }

  private opened({ name, attributes }: SaxesTagPlain): void {
    if (this.stopped) return;
    this.count += 1;
    if (this.count > drawingLimits.elements)
      return this.stop('drawing-too-large', `A drawing may have ${drawingLimits.elements} elements.`);
    if (this.open.length >= drawingLimits.depth) return this.stop('drawing-too-large', `Elements may stand ${drawingLimits.depth} deep.`);
    const node: Node = { name, attributes: {}, children: [], part: null };
    const inside = this.open.at(-1)?.name ?? '';
    if (this.open.length === 0) this.openRoot(name, attributes);
    // What stands in them is HTML to a browser, so that even a known element would mean something else there.
    else if (inside === 'title' || inside === 'desc') this.fault('drawing-unsafe', 'Only words stand in a <title> or a <desc>.');
    else if (!elements.has(name))
      this.fault('drawing-unsafe', `<${name.slice(0, 40)}> is not allowed in a drawing. Allowed: ${[...elements].join(', ')}.`);
    else this.take(node, attributes);
    if (this.open.length === 0) this.root ??= node;
    else this.open.at(-1)?.children.push(node);
    this.open.push(node);
  }

  private openRoot(name: string, attributes: Record<string, string>): void {
    if (name !== 'svg') return this.stop('drawing-shape', 'The outermost element must be <svg>.');
    if (attributes['xmlns'] !== 'http://www.w3.org/2000/svg')
      this.fault('drawing-shape', 'The <svg> must have xmlns="http://www.w3.org/2000/svg".');
    for (const key of Object.keys(attributes))
      if (!['xmlns', 'viewBox', 'width', 'height'].includes(key))
        this.fault('drawing-unsafe', `The attribute ${key.slice(0, 40)} is not allowed on <svg>.`);
    this.viewBox = attributes['viewBox'] ?? '';
  }

  private take(node: Node, attributes: Record<string, string>): void {
    const { id, 'data-mark': mark, ...rest } = attributes;
    for (const [key, value] of Object.entries(rest)) {
      const wrong = attributeFault(key, value);
      if (wrong === null) node.attributes[key] = value;
      else this.fault('drawing-unsafe', `The attribute ${key.slice(0, 40)} ${wrong}.`);
    }
    if (id === undefined && mark === undefined) return;
    const at = /^(\d{1,4}(?:\.\d+)?) (\d{1,4}(?:\.\d+)?)$/.exec(mark ?? '');
    if (node.name !== 'g' || !/^[a-z][a-z0-9-]{0,39}$/.test(id ?? '') || at === null) {
      const example = '<g id="fuse" data-mark="120 80"><title>The fuse</title>…</g>';
      return this.fault('drawing-shape', `A named part is a group with an id, the place of its mark, and a title: ${example}.`);
    }
    node.part = { id: id ?? '', at: [Number(at[1]), Number(at[2])] };
  }

  private words(words: string): void {
    const text = words.replace(/\s+/g, ' ');
    const inside = this.open.at(-1);
    // What stands inside an element that was refused is not told again.
    if (this.stopped || inside === undefined || text.trim() === '' || (this.open.length > 1 && !elements.has(inside.name))) return;
    if (!['text', 'tspan', 'title', 'desc'].includes(inside.name))
      return this.fault('drawing-shape', 'Words stand in <text>, <title> or <desc>.');
    const most = inside.name === 'desc' ? 600 : drawingLimits.lettersOfText;
    if (text.length > most) return this.fault('drawing-too-large', `This text has ${text.length} letters, and ${most} are allowed.`);
    inside.children.push(text);
  }

  private closed(): void {
    this.open.pop();
  }
}

/** The titles, the size and the named parts, out of what is known to be harmless. */
function drawingOf(id: string, root: Node, viewBox: string): SvgReading {
  const faults: SvgFault[] = [];
  const say = (rule: SvgFault['rule'], message: string): void => void faults.push({ rule, line: 1, column: 1, message });
  const { smallest, largest } = drawingLimits;
  const box = /^0 0 (\d{2,4}) (\d{2,4})$/.exec(viewBox);
  const [width, height] = [Number(box?.[1] ?? 0), Number(box?.[2] ?? 0)];
  if (Math.min(width, height) < smallest || Math.max(width, height) > largest)
    say('drawing-shape', `The <svg> needs viewBox="0 0 width height" with both from ${smallest} to ${largest}.`);
  const title = wordsOf(root, 'title');
  const description = wordsOf(root, 'desc');
  if (title === '') say('drawing-shape', 'Say in a <title>, first in the <svg>, what the drawing is.');
  if (description === '') say('drawing-shape', 'Say in a <desc>, after the <title>, what is to be seen, for people who cannot see it.');
  const body = root.children.filter((child): child is Node => typeof child !== 'string' && child.name !== 'title' && child.name !== 'desc');
  const parts = body.flatMap(partsOf);
  for (const { id: part, name, at } of parts) {
    if (name === '') say('drawing-shape', `The part "${part}" has no name: begin its group with a <title>.`);
    if (at[0] > width || at[1] > height) say('drawing-shape', `The mark of the part "${part}" lies outside the drawing.`);
    if (parts.filter((other) => other.id === part).length > 1) say('drawing-shape', `Two parts are called "${part}".`);
  }
  if (parts.length > drawingLimits.parts) say('drawing-too-large', `A drawing may have ${drawingLimits.parts} named parts.`);
  if (faults.length > 0) return { drawing: null, faults };
  return { drawing: { id, title, description, width, height, parts, body: body.map(bare) }, faults: [] };
}

function wordsOf(node: Node, name: string): string {
  const found = node.children.find((child) => typeof child !== 'string' && child.name === name);
  if (found === undefined || typeof found === 'string') return '';
  return found.children
    .filter((child) => typeof child === 'string')
    .join('')
    .trim();
}

function partsOf(node: Node): DrawingPart[] {
  const inner = node.children.flatMap((child) => (typeof child === 'string' ? [] : partsOf(child)));
  return node.part === null ? inner : [{ ...node.part, name: wordsOf(node, 'title') }, ...inner];
}

const bare = ({ name, attributes, children }: Node): DrawingElement => ({
  name,
  attributes,
  children: children.map((child) => (typeof child === 'string' ? child : bare(child))),
});
