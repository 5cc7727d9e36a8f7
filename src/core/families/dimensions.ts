import { findUnit } from '../../../shared/numeric-answer/units.js';
import { quantityWords, type QuantityId } from '../../../shared/numeric-answer/quantities.js';
import type { CompiledFamily } from './compile.js';
import type { Report } from './variant.js';
import { ExpressionError, type Expression, type Node } from './expression.js';
import { functionNamed } from './functions.js';

/**
 * Whether the units of a family's formulas fit: only like is added to or held against like, and the answer comes out as the kind of
 * quantity its unit measures. This is about kinds, not sizes: a missing factor of 1000 is found by holding the answer against the
 * calculation that the family names. Figures written into a formula are plain numbers; so are decibels, degrees and per cent.
 */

/** Powers of metre, kilogram, second and ampere. Source: SI Brochure (2019), table 4 and section 2.3.4. */
type Dimension = readonly [metre: number, kilogram: number, second: number, ampere: number];

const plain: Dimension = [0, 0, 0, 0];

const dimensions: Readonly<Record<QuantityId, Dimension>> = {
  voltage: [2, 1, -3, -1],
  current: [0, 0, 0, 1],
  power: [2, 1, -3, 0],
  'apparent-power': [2, 1, -3, 0],
  resistance: [2, 1, -3, -2],
  charge: [0, 0, 1, 1],
  energy: [2, 1, -2, 0],
  capacitance: [-2, -1, 4, 2],
  inductance: [2, 1, -2, -2],
  frequency: [0, 0, -1, 0],
  length: [1, 0, 0, 0],
  area: [2, 0, 0, 0],
  volume: [3, 0, 0, 0],
  time: [0, 0, 1, 0],
  angle: plain,
  temperature: plain,
  ratio: plain,
  level: plain,
  gain: plain,
  'power-level': plain,
  'sound-level': plain,
  'sound-level-c': plain,
  'power-density': [0, 1, -3, 0],
  'electric-field': [1, 1, -3, -1],
  'magnetic-field': [-1, 0, 0, 1],
  'flux-density': [0, 1, -2, -1],
  'resistance-per-length': [1, 1, -3, -2],
  'loss-per-length': [-1, 0, 0, 0],
  'current-density': [-2, 0, 0, 1],
  'absorption-rate': [2, 0, -3, 0],
  speed: [1, 0, -1, 0],
  rotation: [0, 0, -1, 0],
  mass: [0, 1, 0, 0],
  concentration: [-3, 1, 0, 0],
  pressure: [-1, 1, -2, 0],
  force: [1, 1, -2, 0],
};

const same = (a: Dimension, b: Dimension): boolean => a.every((power, i) => Math.abs(power - (b[i] as number)) < 1e-9);
const combined = (a: Dimension, b: Dimension, times: 1 | -1): Dimension =>
  a.map((power, i) => power + times * (b[i] as number)) as unknown as Dimension;
const raised = (a: Dimension, by: number): Dimension => a.map((power) => power * by) as unknown as Dimension;

/** The kind of quantity, for a sentence. */
function spoken(dimension: Dimension): string {
  if (same(dimension, plain)) return 'a plain number';
  const found = (Object.keys(dimensions) as QuantityId[]).find((id) => same(dimensions[id], dimension));
  return found === undefined ? 'a quantity of another kind' : quantityWords[found];
}

/** What a unit measures; products ("m MHz") and quotients with a figure ("ohm/1000 ft") included. Null for an unknown unit. */
export function dimensionOf(unit: string): Dimension | null {
  const whole = findUnit(unit);
  if (whole !== null) return dimensions[whole.quantity];
  let sum: Dimension = plain;
  for (const [i, part] of unit.split('/').entries()) {
    for (const word of part.split(' ').filter((each) => !/^\d*$/.test(each))) {
      const one = findUnit(word);
      if (one === null) return null;
      sum = combined(sum, dimensions[one.quantity], i === 0 ? 1 : -1);
    }
  }
  return sum;
}

type Known = ReadonlyMap<string, Dimension>;

function alike(first: Node, second: Node, known: Known): Dimension {
  const [a, b] = [of(first, known), of(second, known)];
  if (!same(a, b)) throw new ExpressionError(second.column, `${spoken(a)} and ${spoken(b)} stand where two of a kind should`);
  return a;
}

function needPlain(node: Node, known: Known): Dimension {
  const found = of(node, known);
  if (!same(found, plain)) throw new ExpressionError(node.column, `${spoken(found)} stands where a plain number should`);
  return plain;
}

function of(node: Node, known: Known): Dimension {
  switch (node.kind) {
    case 'number':
      return plain;
    case 'name':
      return known.get(node.name) ?? plain;
    case 'minus':
      return of(node.operand, known);
    case 'binary':
      if (node.op === '+' || node.op === '-') return alike(node.left, node.right, known);
      return combined(of(node.left, known), of(node.right, known), node.op === '*' ? 1 : -1);
    case 'call':
      return ofCall(node, known);
  }
}

function ofCall({ name, args, column }: Node & { kind: 'call' }, known: Known): Dimension {
  const [first, second, third] = args as [Node, Node, Node];
  if (name === 'sqrt') return raised(of(first, known), 0.5);
  if (name === 'pow') return power(first, second, known);
  if (name === 'abs') return of(first, known);
  if (args.length === 1 && functionNamed(name)?.calculation === undefined) return needPlain(first, known);
  const calculation = functionNamed(name)?.calculation;
  if (calculation === undefined) {
    const kind = alike(first, second, known);
    return args.length === 3 ? of(third, known) : kind;
  }
  const needed = calculation.inputs.filter(({ optional }) => !optional);
  args.forEach((arg, i) => {
    const [got, wanted] = [of(arg, known), dimensionOf(needed[i]?.unit ?? '') ?? plain];
    if (!same(got, wanted)) throw new ExpressionError(arg.column, `${name} needs ${spoken(wanted)} here, and this is ${spoken(got)}`);
  });
  const output = dimensionOf(calculation.outputs[0]?.unit ?? '');
  if (output === null) throw new ExpressionError(column, `the unit of what ${name} gives is unknown`);
  return output;
}

function power(base: Node, exponent: Node, known: Known): Dimension {
  needPlain(exponent, known);
  const from = of(base, known);
  if (same(from, plain)) return plain;
  if (exponent.kind !== 'number') throw new ExpressionError(exponent.column, `${spoken(from)} can only be raised to a fixed power`);
  return raised(from, exponent.value);
}

/** The kind of quantity a formula gives. Throws ExpressionError where unlike things are added, compared or taken a logarithm of. */
export const dimensionOfExpression = (expression: Expression, known: Known): Dimension => of(expression.root, known);

/** Reports every formula of derived values and of the answer whose units do not fit, and every unit that is not known. */
export function checkDimensions({ variant, derived, answer }: CompiledFamily, report: Report): void {
  const known = new Map<string, Dimension>();
  for (const part of ['inputs', 'constants'] as const) {
    for (const [name, { unit }] of Object.entries(variant[part])) {
      const found = dimensionOf(unit);
      if (found === null) report([part, name, 'unit'], `there is no unit "${unit}"`);
      known.set(name, found ?? plain);
    }
  }
  const wanted = dimensionOf(variant.answer.unit);
  if (wanted === null) report(['answer', 'unit'], `there is no unit "${variant.answer.unit}"`);
  const look = (expression: Expression, path: (string | number)[]): Dimension | null => {
    try {
      return dimensionOfExpression(expression, known);
    } catch (error) {
      if (!(error instanceof ExpressionError)) throw error;
      report(path, `the units do not fit: ${error.message}`);
      return null;
    }
  };
  for (const { name, expression } of derived) known.set(name, look(expression, ['derived', name]) ?? plain);
  const got = look(answer, ['answer', 'expr']);
  if (got !== null && wanted !== null && !same(got, wanted))
    report(['answer', 'expr'], `the formula gives ${spoken(got)}, and the answer's unit ${variant.answer.unit} measures ${spoken(wanted)}`);
}
