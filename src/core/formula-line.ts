import { bracketed, formula, fraction, inRow, joined, piece, sign, widthOf, type Piece } from './families/mathml.js';
import { tokensOf, type Token } from './formula-tokens.js';

/**
 * Turns a line of working, such as "Running current: I = P / V = 2300 W / 230 V = 10 A", into words and a formula in MathML. The grammar
 * is that of `shared/safety-maths`: symbols (I, V_drop, λ), numbers with units behind a narrow space, + − × / ^ √ ( ) and relations.
 * A line that is no formula stays words. One pass over the text and bounded nesting; never throws.
 */
export interface FormulaLine {
  before: string;
  /** The formula; empty when the line is words only, which then stand in `before`. */
  mathml: string[];
  after: string;
}

class NoFormula extends Error {}
const deepest = 12;

class Parser {
  private at = 0;
  constructor(private readonly tokens: readonly Token[]) {}

  all(): Piece[] {
    const pieces = this.relation(0);
    if (this.at < this.tokens.length) throw new NoFormula();
    return pieces;
  }

  private peek(kind: Token['kind'], texts?: readonly string[]): Token | null {
    const token = this.tokens[this.at];
    return token?.kind === kind && (texts === undefined || texts.includes(token.text)) ? token : null;
  }

  private take(kind: Token['kind'], texts?: readonly string[]): Token | null {
    const token = this.peek(kind, texts);
    if (token !== null) this.at += 1;
    return token;
  }

  private relation(depth: number): Piece[] {
    const row = this.sum(depth);
    for (let token; (token = this.take('sign', ['=', '≈', '≤', '≥', '<', '>', ','])) !== null;)
      row.push(sign(token.text), ...this.sum(depth));
    return row;
  }

  private sum(depth: number): Piece[] {
    const row: Piece[] = [];
    if (this.take('sign', ['-', '−']) !== null) row.push(piece('<mo>−</mo>', 1));
    row.push(...this.product(depth));
    for (let token; (token = this.take('sign', ['+', '-', '−'])) !== null;)
      row.push(sign(token.text === '+' ? '+' : '−'), ...this.product(depth));
    return row;
  }

  /** All that is multiplied before a stroke stands above it. */
  private product(depth: number): Piece[] {
    let row = this.power(depth);
    for (;;) {
      if (this.take('sign', ['×', '·']) !== null) row = [...row, sign('×'), ...this.power(depth)];
      else if (this.take('over') !== null) row = [fraction(unbracketed(row), unbracketed(this.power(depth)))];
      else if (this.follows()) row = [...row, piece('<mspace width="0.17em"/>', 1), ...this.power(depth)];
      else return row;
    }
  }

  /** "4 π S": a product without a sign, but never two words of prose. */
  private follows(): boolean {
    const [next, before] = [this.tokens[this.at], this.tokens[this.at - 1]];
    if (next === undefined || before === undefined) return false;
    const short = (token: Token): boolean => token.kind === 'name' && (token.text.length <= 2 || token.text.includes('_'));
    if (next.kind !== 'name' && next.kind !== 'root' && next.kind !== 'open') return false;
    if (next.kind === 'name' && !short(next) && !functionNames.has(next.text)) throw new NoFormula();
    return before.kind === 'number' || before.kind === 'close' || short(before);
  }

  private power(depth: number): Piece[] {
    const base = this.atom(depth);
    const raised = this.take('raised');
    if (raised !== null) return [piece(`<msup>${inRow(base)}<mn>${raised.text === '²' ? 2 : 3}</mn></msup>`, widthOf(base) + 1)];
    if (this.take('power') === null) return base;
    const exponent = unbracketed(this.take('sign', ['-', '−']) === null ? this.atom(depth) : [piece('<mo>−</mo>', 1), ...this.atom(depth)]);
    return [piece(`<msup>${inRow(base)}${inRow(exponent)}</msup>`, widthOf(base) + widthOf(exponent))];
  }

  private atom(depth: number): Piece[] {
    if (depth > deepest) throw new NoFormula();
    const number = this.take('number');
    if (number !== null) return [piece(`<mn>${thin(number.text)}</mn>`, number.text.length)];
    const quantity = this.take('quantity');
    if (quantity !== null) return [quantityPiece(quantity)];
    if (this.take('root') !== null) {
      const inside = unbracketed(this.atom(depth + 1));
      return [piece(`<msqrt>${joined(inside)}</msqrt>`, widthOf(inside) + 1)];
    }
    if (this.take('open') !== null) {
      const inside = this.relation(depth + 1);
      if (this.take('close') === null) throw new NoFormula();
      return [Object.assign(bracketed(inside), { inside })];
    }
    const name = this.take('name');
    if (name === null || proseWords.has(name.text)) throw new NoFormula();
    return functionNames.has(name.text) ? [functionPiece(name.text), ...this.atom(depth + 1)] : [namePiece(name.text)];
  }
}

/** Short words that no quantity is called by. */
const proseWords = new Set('is to of in at on or by no it as so if be an'.split(' '));
const functionNames = new Set(['ln', 'log10', 'log₁₀', 'log', 'cos', 'sin', 'tan', 'arctan', 'atan', 'exp', 'min', 'max']);

/** A bracket that a root, a fraction or a raised exponent makes needless. */
function unbracketed(row: Piece[]): Piece[] {
  const [only] = row as [(Piece & { inside?: Piece[] }) | undefined];
  return row.length === 1 && only?.inside !== undefined ? only.inside : row;
}

const thin = (text: string): string => text.replace(/[\u202f ]/g, '\u2009').replace('-', '−');

function quantityPiece({ text, unit }: Token): Piece {
  const gap = unit === '°' ? '' : '\u00a0';
  return piece(`<mrow><mn>${thin(text)}</mn><mtext>${gap}${unit}</mtext></mrow>`, text.length + unit.length + gap.length);
}

function functionPiece(name: string): Piece {
  const title = name.startsWith('log1') || name === 'log₁₀' ? '<msub><mi>log</mi><mn>10</mn></msub>' : `<mi>${name}</mi>`;
  return piece(`<mrow>${title}<mo>&#x2061;</mo></mrow>`, name.length);
}

/** Letters in italics, what follows an underline or is a figure as an index; a whole word upright. */
function namePiece(name: string): Piece {
  const [, letters = name, figure = '', index = ''] = /^([^\d₀-₉_]+)([\d₀-₉]*)(?:_(.*))?$/.exec(name) ?? [];
  const below = `${[...figure].map((sign) => ('₀₁₂₃₄₅₆₇₈₉'.includes(sign) ? '₀₁₂₃₄₅₆₇₈₉'.indexOf(sign) : sign)).join('')}${index.replace(/_/g, ' ')}`;
  const base = letters.length > 4 && letters === letters.toLowerCase() ? `<mtext>${letters}</mtext>` : `<mi>${letters}</mi>`;
  return piece(below === '' ? base : `<msub>${base}<mtext>${below}</mtext></msub>`, name.length);
}

function mathmlOf(text: string): string[] | null {
  const tokens = text.length > 200 ? null : tokensOf(text);
  if (tokens === null) return null;
  try {
    return [formula(new Parser(tokens).all())];
  } catch (error) {
    if (error instanceof NoFormula) return null;
    throw error;
  }
}

/** The formula alone, as a title or heading needs it: null when it is words. */
export const formulaOf = (text: string): string[] | null => (/[=≈≤≥]/.test(text) ? mathmlOf(text.trim()) : null);

export function formulaLine(line: string): FormulaLine {
  const words: FormulaLine = { before: line, mathml: [], after: '' };
  const relation = line.search(/[=≈≤≥]/);
  if (relation < 0) return words;
  const colon = line.lastIndexOf(': ', relation);
  const starts = colon < 0 ? [0] : [0, colon + 2];
  for (const start of starts) {
    const rest = line.slice(start);
    const tail = /[;,.](?= |$)/.exec(rest.slice(relation - start));
    const ends = [rest.length, ...(tail === null ? [] : [relation - start + tail.index])];
    for (const end of ends) {
      const mathml = mathmlOf(rest.slice(0, end).trim());
      if (mathml !== null)
        return {
          before: line.slice(0, start).trim(),
          mathml,
          after: rest
            .slice(end)
            .replace(/^[;,.] ?/, '')
            .trim(),
        };
    }
  }
  return words;
}
