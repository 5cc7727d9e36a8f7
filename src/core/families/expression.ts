import jsep from 'jsep';
import { RungwiseError } from '../errors.js';
import { functionNamed, functionNames } from './functions.js';

/**
 * The formula language of packs: numbers, names, + - * / ( ), the functions of functions.ts and, in constraints, one comparison.
 * jsep reads the text; only the kinds of node named here are taken over from its tree, because packs come from strangers: there are no
 * properties, texts, assignments or values that can be called, and the cost of a formula is bounded before it is worked.
 */
export const expressionLimits = { characters: 500, nodes: 200, depth: 30 } as const;

export type Node =
  | { kind: 'number'; value: number; column: number }
  | { kind: 'name'; name: string; column: number }
  | { kind: 'minus'; operand: Node; column: number }
  | { kind: 'binary'; op: '+' | '-' | '*' | '/'; left: Node; right: Node; column: number }
  | { kind: 'call'; name: string; args: Node[]; column: number };

export interface Expression {
  text: string;
  root: Node;
  /** What working it costs at most, in nodes; a function over a list counts as long as the longest list. */
  cost: number;
}

export interface Constraint {
  text: string;
  op: '<' | '<=' | '>' | '>=' | '==' | '!=';
  left: Expression;
  right: Expression;
}

/** A formula that cannot be read or worked. `column` counts characters of the formula from 1. */
export class ExpressionError extends RungwiseError {
  readonly column: number;

  constructor(column: number, reason: string) {
    super('bad-input', `column ${column}: ${reason}`);
    this.column = column;
  }
}

const comparisons: readonly string[] = ['<', '<=', '>', '>=', '==', '!='];
const arithmetic: readonly string[] = ['+', '-', '*', '/'];

// jsep keeps its language in one place for the whole process; nothing else here uses it.
jsep.removeAllBinaryOps();
jsep.removeAllUnaryOps();
jsep.removeAllLiterals();
jsep.addUnaryOp('-');
comparisons.forEach((op) => jsep.addBinaryOp(op, 1));
['+', '-'].forEach((op) => jsep.addBinaryOp(op, 2));
['*', '/'].forEach((op) => jsep.addBinaryOp(op, 3));

/** What jsep lets through or tells less plainly. Each pattern runs once over the text; the column is that of what it finds. */
const refused: readonly (readonly [RegExp, string])[] = [
  [/[^A-Za-z0-9.+\-*/(),<>=! ]/, 'this character has no meaning in a formula'],
  [/(?<![A-Za-z0-9.])\d+(?:\.\d+)?(?=[A-Za-z])/, 'a letter stands right after a number; write * between them, and no exponents'],
  [/(?<!\d)\.|\.(?!\d)/, 'a point belongs between the figures of a number'],
  [/(?<![<>=!])=(?!=)/, 'this sign has no meaning in a formula'],
];

function treeOf(text: string): jsep.Expression {
  const most = expressionLimits.characters;
  if (text.length > most) throw new ExpressionError(most + 1, `longer than ${most} characters; break it up with derived values`);
  if (text.trim() === '') throw new ExpressionError(1, 'the formula is empty');
  for (const [pattern, reason] of refused) {
    const found = pattern.exec(text);
    if (found !== null) throw new ExpressionError(found.index + 1, reason);
  }
  try {
    return jsep(text);
  } catch (error) {
    const { index, description } = error as { index?: number; description?: string };
    throw new ExpressionError(Math.min((index ?? 0) + 1, text.length + 1), description ?? 'this cannot be read as a formula');
  }
}

/** Takes a tree over, node by node. jsep's nodes carry no place, but its leaves come in the order of the text. */
class Converter {
  private nodes = 0;
  private depth = 0;
  private commas: number;
  private readonly leaves: RegExpStringIterator<RegExpExecArray>;
  private column = 1;
  cost = 0;

  constructor(private readonly text: string) {
    this.leaves = text.matchAll(/[A-Za-z][A-Za-z0-9]*|\d+(?:\.\d+)?/g);
    this.commas = text.split(',').length - 1;
  }

  private fault(reason: string): ExpressionError {
    return new ExpressionError(this.column, reason);
  }

  private leaf(): number {
    const next = this.leaves.next();
    if (next.done !== true) this.column = next.value.index + 1;
    return this.column;
  }

  /** @param level 0 for the left side of a sign: "a + b + c" is as deep as "a + b" */
  node(tree: jsep.Expression, level: 0 | 1 = 1): Node {
    this.nodes += 1;
    this.cost += 1;
    this.depth += level;
    if (this.nodes > expressionLimits.nodes) throw this.fault(`more than ${expressionLimits.nodes} parts; break it up with derived values`);
    if (this.depth > expressionLimits.depth) throw this.fault(`nested deeper than ${expressionLimits.depth}`);
    const node = this.taken(tree as jsep.CoreExpression);
    this.depth -= level;
    return node;
  }

  private taken(tree: jsep.CoreExpression): Node {
    if (tree.type === 'Literal' && typeof tree.value === 'number') return this.number(tree.value);
    if (tree.type === 'Identifier') return this.name(tree.name);
    if (tree.type === 'UnaryExpression' && tree.operator === '-')
      return { kind: 'minus', operand: this.node(tree.argument), column: this.column };
    if (tree.type === 'BinaryExpression') return this.binary(tree);
    if (tree.type === 'CallExpression') return this.call(tree);
    if (tree.type === 'Compound') throw this.second(tree.body);
    throw this.fault('a number, a name or a function of one should stand here');
  }

  /** jsep reads "P V" as two formulas; the fault lies where the second begins. */
  private second(parts: jsep.Expression[]): ExpressionError {
    if (parts[0] !== undefined) this.node(parts[0]);
    this.leaf();
    return this.fault('the formula should end here, or a sign is missing');
  }

  private number(value: number): Node {
    const column = this.leaf();
    if (!Number.isFinite(value)) throw this.fault('the number is too large');
    return { kind: 'number', value, column };
  }

  private name(name: string): Node {
    const column = this.leaf();
    if (name === 'pi') return { kind: 'number', value: Math.PI, column };
    if (functionNamed(name) !== undefined) throw this.fault(`${name} is a function: write ${name}(…)`);
    if (!/^[A-Z]/.test(name)) throw this.fault(`"${name}" is not a function, and names start with a capital letter`);
    return { kind: 'name', name, column };
  }

  private binary({ operator, left: a, right: b }: jsep.BinaryExpression): Node {
    const left = this.node(a, 0);
    if (!arithmetic.includes(operator)) {
      const from = this.text.slice(this.column).search(/[<>=!]/);
      throw new ExpressionError(this.column + from + 1, `a comparison (${operator}) belongs in a constraint, once`);
    }
    return { kind: 'binary', op: operator as '+' | '-' | '*' | '/', left, right: this.node(b), column: left.column };
  }

  private call({ callee, arguments: given }: jsep.CallExpression): Node {
    const column = this.leaf();
    const name = callee.type === 'Identifier' ? String(callee.name) : '';
    const known = functionNamed(name);
    if (known === undefined)
      throw this.fault(`there is no function "${name}"; there are ${functionNames.join(', ')}, and the safety maths`);
    if (given.length !== known.takes.length) throw this.fault(`${name} takes ${known.takes.length} values, and ${given.length} are given`);
    const args = given.map((arg) => this.node(arg));
    known.takes.forEach((kind, i) => {
      const arg = args[i] as Node;
      if (kind === 'list' && arg.kind !== 'name') throw new ExpressionError(arg.column, `${name} needs the name of a list here`);
    });
    this.commas -= given.length - 1;
    this.cost += known.cost;
    return { kind: 'call', name, args, column };
  }

  /** jsep lets values of a function stand side by side; here each needs its comma. */
  end(): void {
    if (this.commas !== 0) throw this.fault('a comma is missing, or stands where none belongs');
  }
}

/** Reads a formula. Throws ExpressionError with the column of the first thing wrong. */
export function parseExpression(text: string): Expression {
  const converter = new Converter(text);
  const root = converter.node(treeOf(text));
  converter.end();
  return { text, root, cost: converter.cost };
}

/** Reads a constraint: two formulas with one comparison between. Throws ExpressionError. */
export function parseConstraint(text: string): Constraint {
  const tree = treeOf(text);
  if (tree.type !== 'BinaryExpression' || !comparisons.includes(String(tree.operator)))
    throw new ExpressionError(text.length + 1, `a comparison (${comparisons.join(' ')}) should stand here`);
  const { operator, left: a, right: b } = tree as jsep.BinaryExpression;
  const converter = new Converter(text);
  const left = { text, root: converter.node(a), cost: converter.cost };
  const root = converter.node(b);
  converter.end();
  return { text, op: operator as Constraint['op'], left, right: { text, root, cost: converter.cost - left.cost } };
}
