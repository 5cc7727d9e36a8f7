import { RungwiseError } from '../errors.js';
import type { Region } from '../syllabus.js';
import { compileCalculator, type CompiledCalculator } from './calculator.js';
import { namesIn } from './evaluate.js';
import { ExpressionError, parseConstraint, parseExpression, type Constraint, type Expression } from './expression.js';
import type { Value } from './functions.js';
import { gridSize, gridValue } from './numbers.js';
import type { Direction, Family, FamilyInput } from './schema.js';
import { variantOf, writtenAt, type Path, type Report, type Variant } from './variant.js';

export interface CompiledInput {
  name: string;
  label: string;
  unit: string;
  size: number;
  at(position: number): number;
}

export interface CompiledTellTale {
  name: string;
  label: string;
  tell: string;
  direction: Direction;
  expression: Expression;
}

/** A family for one region, every formula read. Made once and drawn from often. */
export interface CompiledFamily {
  variant: Variant;
  region: Region;
  /** Sorted by name: the order in which chance is asked must not hang on how a file or a database orders its keys. */
  inputs: CompiledInput[];
  constants: ReadonlyMap<string, Value>;
  /** Each after those it uses. */
  derived: { name: string; expression: Expression }[];
  constraints: Constraint[];
  answer: Expression;
  tellTales: CompiledTellTale[];
  calculator: CompiledCalculator | null;
  /** Nodes worked for one set of inputs, at most. */
  cost: number;
}

function compileInput([name, input]: [string, FamilyInput]): CompiledInput {
  const { label, unit } = input;
  if ('choices' in input) return { name, label, unit, size: input.choices.length, at: (i) => input.choices[i] as number };
  return { name, label, unit, size: gridSize(input), at: (i) => gridValue(input, i) };
}

const byName = ([a]: [string, unknown], [b]: [string, unknown]): number => (a < b ? -1 : a > b ? 1 : 0);

/** Reads a formula, and sends what is wrong with it to the report. */
function read<T>(parse: (text: string) => T, text: string, path: Path, report: Report): T | null {
  try {
    return parse(text);
  } catch (error) {
    if (!(error instanceof ExpressionError)) throw error;
    report(path, `${error.message} in "${text.length > 80 ? `${text.slice(0, 80)}…` : text}"`);
    return null;
  }
}

/** Says which names a formula uses that are not there, or are lists where numbers should be. */
function checkNames(expressions: Expression[], kinds: ReadonlyMap<string, 'number' | 'list'>, path: Path, report: Report): void {
  for (const use of expressions.flatMap(namesIn)) {
    const kind = kinds.get(use.name);
    if (kind === undefined) report(path, `column ${use.column}: nothing is called ${use.name}`);
    else if (kind !== use.kind) report(path, `column ${use.column}: ${use.name} is a ${kind}, and a ${use.kind} is needed here`);
  }
}

/** Puts derived values in an order in which each follows those it uses; values that use each other in a ring are reported. */
function inOrder(derived: { name: string; expression: Expression }[], report: Report): { name: string; expression: Expression }[] {
  const waiting = new Map(derived.map((entry) => [entry.name, entry]));
  const ordered: { name: string; expression: Expression }[] = [];
  for (let moved = true; moved;) {
    const ready = [...waiting.values()].filter((entry) => namesIn(entry.expression).every((use) => !waiting.has(use.name)));
    ready.forEach((entry) => waiting.delete(entry.name));
    ordered.push(...ready);
    moved = ready.length > 0;
  }
  for (const name of waiting.keys()) report(['derived', name], `${[...waiting.keys()].join(', ')} are worked from each other in a ring`);
  return ordered;
}

function kindsOf(variant: Variant, report: Report): Map<string, 'number' | 'list'> {
  const kinds = new Map<string, 'number' | 'list'>();
  const add = (name: string, kind: 'number' | 'list', path: Path): void => {
    if (kinds.has(name)) report(path, `the name ${name} is used twice`);
    kinds.set(name, kind);
  };
  Object.keys(variant.inputs).forEach((name) => add(name, 'number', ['inputs', name]));
  Object.entries(variant.constants).forEach(([name, { value }]) =>
    add(name, Array.isArray(value) ? 'list' : 'number', ['constants', name]),
  );
  Object.keys(variant.derived).forEach((name) => add(name, 'number', ['derived', name]));
  if (kinds.has(variant.answer.symbol)) report(['answer', 'symbol'], `the name ${variant.answer.symbol} is used twice`);
  return kinds;
}

const costOf = (...groups: Expression[][]): number => groups.flat().reduce((sum, { cost }) => sum + cost, 0);

/** Compiles a variant; whatever is wrong goes to `report`, and the result is null when a formula could not be read. */
export function compileVariant(variant: Variant, report: Report): CompiledFamily | null {
  let sound = true;
  const note: Report = (path, message) => {
    sound = false;
    report(path, message);
  };
  const kinds = kindsOf(variant, note);
  const expression = (text: string, path: Path): Expression => {
    const found = read(parseExpression, text, path, note) ?? { text, root: { kind: 'number', value: NaN, column: 1 }, cost: 1 };
    checkNames([found], kinds, path, note);
    return found;
  };
  const constraints = variant.constraints.flatMap((text, i) => {
    const found = read(parseConstraint, text, ['constraints', i], note);
    if (found !== null) checkNames([found.left, found.right], kinds, ['constraints', i], note);
    return found ?? [];
  });
  const derived = Object.entries(variant.derived).map(([name, text]) => ({ name, expression: expression(text, ['derived', name]) }));
  const answer = expression(variant.answer.expr, ['answer', 'expr']);
  const tellTales = variant.tellTales.map(({ expr, ...rest }, i) => ({ ...rest, expression: expression(expr, ['tellTales', i, 'expr']) }));
  const lists = new Set([...kinds].flatMap(([name, kind]) => (kind === 'list' ? [name] : [])));
  const calculator = compileCalculator(variant, lists, expression, note);
  const ordered = inOrder(derived, note);
  if (!sound) return null;
  return {
    variant,
    region: variant.region,
    inputs: Object.entries(variant.inputs).sort(byName).map(compileInput),
    constants: new Map(Object.entries(variant.constants).map(([name, { value }]) => [name, value])),
    derived: ordered,
    constraints,
    answer,
    tellTales,
    calculator,
    cost: costOf(
      [...derived, ...tellTales].map((entry) => entry.expression),
      [answer, ...constraints.flatMap((c) => [c.left, c.right])],
    ),
  };
}

/**
 * A family made ready to draw from in a region; null when it is not offered there.
 * Throws RungwiseError when a formula cannot be read or uses an unknown name, which a checked pack never holds.
 */
export function compileFamily(family: Family, region: Region): CompiledFamily | null {
  const variant = variantOf(family, region);
  if (variant === null) return null;
  return compileVariant(variant, (path, message) => {
    throw new RungwiseError('internal', `${family.id}, ${writtenAt(family, region, path).join('.')}: ${message}`);
  });
}
