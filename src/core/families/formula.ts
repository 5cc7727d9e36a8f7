import type { CompiledFamily } from './compile.js';
import type { Expression, Node } from './expression.js';
import { figuresOf } from './figures.js';
import { bracketed, figure, fraction, inRow, joined, formula, piece, quantity, sign, symbol, widthOf, type Piece } from './mathml.js';
import type { Worked } from './work.js';

/** Formulas as MathML, made from what a family's answer is worked with, so that what is shown is what is marked. */

/** What a name or a number looks like. */
type Print = (name: string) => Piece;

/** How tightly a node holds together: sums 1, products 2, all else 3. */
function tightness(node: Node): number {
  if (node.kind === 'minus') return 1;
  if (node.kind !== 'binary') return 3;
  if (node.op === '/') return 3;
  return node.op === '*' ? 2 : 1;
}

function row(node: Node, print: Print, least = 0): Piece[] {
  const pieces = bare(node, print);
  return tightness(node) < least ? [bracketed(pieces)] : pieces;
}

function bare(node: Node, print: Print): Piece[] {
  switch (node.kind) {
    case 'number':
      return [node.value === Math.PI ? piece('<mi>π</mi>', 1) : figure(node.value)];
    case 'name':
      return [print(node.name)];
    case 'minus':
      return [piece('<mo>−</mo>', 1), ...row(node.operand, print, 2)];
    case 'binary':
      return binary(node, print);
    case 'call':
      return [called(node.name, node.args, print)];
  }
}

function binary(node: Node & { kind: 'binary' }, print: Print): Piece[] {
  if (node.op === '/') return [quotient(node, print)];
  if (node.op === '*') return [...row(node.left, print, 2), sign('×'), ...row(node.right, print, 2)];
  return [...row(node.left, print), sign(node.op === '-' ? '−' : '+'), ...row(node.right, print, node.op === '-' ? 2 : 0)];
}

/** a / b / c is printed as one fraction, a over b × c, which is how it would be written by hand. */
function quotient(node: Node & { kind: 'binary' }, print: Print): Piece {
  const divisors: Node[] = [];
  let above: Node = node;
  while (above.kind === 'binary' && above.op === '/') {
    divisors.unshift(above.right);
    above = above.left;
  }
  const below = divisors.flatMap((divisor, i) => [...(i === 0 ? [] : [sign('×')]), ...row(divisor, print, divisors.length > 1 ? 2 : 0)]);
  return fraction(row(above, print), below);
}

function called(name: string, args: readonly Node[], print: Print): Piece {
  const rows = args.map((arg) => row(arg, print));
  const [first = [], second = []] = rows;
  const [base, exponent] = args;
  if (name === 'sqrt') return piece(`<msqrt>${joined(first)}</msqrt>`, widthOf(first) + 1);
  if (name === 'abs') return piece(`<mrow><mo>|</mo>${joined(first)}<mo>|</mo></mrow>`, widthOf(first) + 2);
  if (name === 'pow' && base !== undefined && exponent !== undefined) {
    // A quantity needs brackets too, or "400 V²" would square only the unit.
    const isFigure = base.kind === 'number' || (first.length === 1 && !joined(first).startsWith('<mrow>') && base.kind === 'name');
    const held = isFigure ? first : [bracketed(first)];
    return piece(`<msup>${inRow(held)}${inRow(second)}</msup>`, widthOf(held) + widthOf(second));
  }
  const title =
    name === 'log10' ? '<msub><mi>log</mi><mn>10</mn></msub>' : `<mi>${name === 'atan' || name === 'atanDeg' ? 'arctan' : name}</mi>`;
  const inside = rows.flatMap((arg, i) => (i === 0 ? arg : [piece('<mo>,</mo>', 2), ...arg]));
  return piece(`<mrow>${title}<mo>&#x2061;</mo>${bracketed(inside).mathml}</mrow>`, name.length + widthOf(inside) + 2);
}

/** Symbol and formula; the smallest listed size not below x is written "x ≤ F". Null when it hangs on a list in any other way. */
function statement(left: Piece, { root }: Expression, print: Print): Piece[] | null {
  if (root.kind === 'call' && (root.name === 'nextUp' || root.name === 'nextDown') && root.args[0] !== undefined) {
    const inner = row(root.args[0], print);
    return usesList(root.args[0]) ? null : [...inner, sign(root.name === 'nextUp' ? '≤' : '≥'), left];
  }
  return usesList(root) ? null : [left, sign('='), ...row(root, print)];
}

const listFunctions = new Set(['nextUp', 'nextDown', 'downOrZero', 'stepUp', 'stepDown', 'pick', 'pickLE', 'look']);

function usesList(node: Node): boolean {
  if (node.kind === 'minus') return usesList(node.operand);
  if (node.kind === 'binary') return usesList(node.left) || usesList(node.right);
  return node.kind === 'call' && (listFunctions.has(node.name) || node.args.some(usesList));
}

const same = (a: Node, b: Node): boolean => JSON.stringify(a, shapeOnly) === JSON.stringify(b, shapeOnly);
const shapeOnly = (key: string, value: unknown): unknown => (key === 'column' ? undefined : value);

/** A value looked up in a list has no way to be written; where the family has a name for that value, the name stands for it. */
function named(node: Node, derived: CompiledFamily['derived']): Node {
  if (node.kind === 'minus') return { ...node, operand: named(node.operand, derived) };
  if (node.kind === 'binary') return { ...node, left: named(node.left, derived), right: named(node.right, derived) };
  if (node.kind !== 'call') return node;
  const known = usesList(node) ? derived.find(({ expression }) => same(expression.root, node)) : undefined;
  if (known !== undefined) return { kind: 'name', name: known.name, column: node.column };
  return { ...node, args: node.args.map((arg) => named(arg, derived)) };
}

const answerOf = ({ answer, derived }: CompiledFamily): Expression => ({ ...answer, root: named(answer.root, derived) });

/** The units of the names that a formula may print; a value looked up has the unit of its list. */
function unitsOf({ variant: { constants, inputs }, derived }: CompiledFamily): Map<string, string> {
  const units = new Map([...Object.entries(constants), ...Object.entries(inputs)].map(([name, { unit }]) => [name, unit]));
  for (const { name, expression } of derived) {
    const from = usesList(expression.root) && expression.root.kind === 'call' ? expression.root.args.at(-1) : undefined;
    if (from?.kind === 'name') units.set(name, units.get(from.name) ?? '');
  }
  return units;
}

/** A formula in symbols, ready to print; empty when it cannot be written so (a value looked up in a list). */
export function formulaMathML(symbolOfAnswer: string, expression: Expression): string[] {
  const pieces = statement(symbol(symbolOfAnswer), expression, symbol);
  return pieces === null ? [] : [formula(pieces)];
}

/** The same with the numbers and units of a draw put in, ending in the answer as the examiner prints it. */
export function substitutedMathML(compiled: CompiledFamily, { inputs: given, key }: Pick<Worked, 'inputs' | 'key'>): string[] {
  const { values } = figuresOf(compiled, new Map(Object.entries(given).map(([name, { value }]) => [name, value])));
  const { answer } = compiled.variant;
  const units = unitsOf(compiled);
  const print: Print = (name) => {
    const value = values.get(name);
    return typeof value === 'number' ? quantity(value, units.get(name) ?? '') : symbol(name);
  };
  const result = quantity(key.shown, key.unit);
  const isChoice = answer.kind === 'choice';
  const pieces = statement(isChoice ? result : symbol(answer.symbol), answerOf(compiled), print);
  if (pieces === null) return [];
  return [formula(isChoice ? pieces : [...pieces, sign(key.shown === key.value ? '=' : '≈'), result])];
}

/** What a page prints above the steps: the formula in symbols, then the same with the numbers and units of a draw put in. */
export function workingMathML(compiled: CompiledFamily, draw: Pick<Worked, 'inputs' | 'key'>): string[] {
  return [...formulaMathML(compiled.variant.answer.symbol, answerOf(compiled)), ...substitutedMathML(compiled, draw)];
}
