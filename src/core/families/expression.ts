import { RungwiseError } from '../errors.js';
import { functions } from './functions.js';
import { Reader, type Token } from './tokens.js';

/**
 * The formula language of packs: numbers, names, + - * / ( ), the functions of functions.ts and, in constraints, one comparison.
 * Written by us and kept this small because packs come from strangers: there are no properties, texts, assignments or values
 * that can be called, and the cost of a formula is bounded before it is worked.
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

const listCost = 40;

class Parser {
  private nodes = 0;
  private depth = 0;
  cost = 0;
  readonly tokens: Reader;

  constructor(text: string) {
    if (text.length > expressionLimits.characters) {
      throw new ExpressionError(
        expressionLimits.characters + 1,
        `longer than ${expressionLimits.characters} characters; break it up with derived values`,
      );
    }
    this.tokens = new Reader(text, (column, reason) => new ExpressionError(column, reason));
  }

  /** Every node passes here, so that the bound on their number holds. */
  private node<N extends Node>(node: N): N {
    this.nodes += 1;
    this.cost += 1;
    if (this.nodes > expressionLimits.nodes) {
      throw new ExpressionError(node.column, `more than ${expressionLimits.nodes} parts; break it up with derived values`);
    }
    return node;
  }

  private nested<N>(column: number, read: () => N): N {
    this.depth += 1;
    if (this.depth > expressionLimits.depth) throw new ExpressionError(column, `nested deeper than ${expressionLimits.depth}`);
    const result = read();
    this.depth -= 1;
    return result;
  }

  sum(): Node {
    return this.chain(['+', '-'], () => this.chain(['*', '/'], () => this.factor()));
  }

  private chain(operators: readonly string[], operand: () => Node): Node {
    let left = operand();
    while (this.tokens.isSign(operators)) {
      const { text, column } = this.tokens.take();
      left = this.node({ kind: 'binary', op: text as '+' | '-' | '*' | '/', left, right: operand(), column });
    }
    return left;
  }

  private factor(): Node {
    const token = this.tokens.take();
    if (token.kind === 'number') return this.number(token);
    if (token.kind === 'name') return this.tokens.isSign(['(']) ? this.call(token) : this.name(token);
    if (token.text === '-')
      return this.node({ kind: 'minus', operand: this.nested(token.column, () => this.factor()), column: token.column });
    if (token.text === '(') {
      const inner = this.nested(token.column, () => this.sum());
      this.tokens.expect(')');
      return inner;
    }
    const found = token.kind === 'end' ? 'the formula ends' : `"${token.text}" stands`;
    throw new ExpressionError(token.column, `${found} where a number, a name or a bracket should be`);
  }

  private number(token: Token): Node {
    const value = Number(token.text);
    if (!Number.isFinite(value)) throw new ExpressionError(token.column, 'the number is too large');
    return this.node({ kind: 'number', value, column: token.column });
  }

  private name({ text, column }: Token): Node {
    if (text === 'pi') return this.node({ kind: 'number', value: Math.PI, column });
    if (functions.has(text)) throw new ExpressionError(column, `${text} is a function: write ${text}(…)`);
    if (!/^[A-Z]/.test(text)) throw new ExpressionError(column, `"${text}" is not a function, and names start with a capital letter`);
    return this.node({ kind: 'name', name: text, column });
  }

  private call({ text, column }: Token): Node {
    const known = functions.get(text);
    if (known === undefined)
      throw new ExpressionError(column, `there is no function "${text}"; there are ${[...functions.keys()].join(', ')}`);
    this.tokens.expect('(');
    const args = this.nested(column, () => {
      const found = [this.sum()];
      while (this.tokens.isSign([','])) {
        this.tokens.take();
        found.push(this.sum());
      }
      return found;
    });
    this.tokens.expect(')');
    if (args.length !== known.takes.length)
      throw new ExpressionError(column, `${text} takes ${known.takes.length} values, and ${args.length} are given`);
    known.takes.forEach((kind, i) => {
      const arg = args[i] as Node;
      if (kind === 'list' && arg.kind !== 'name') throw new ExpressionError(arg.column, `${text} needs the name of a list here`);
    });
    if (known.takes.includes('list')) this.cost += listCost;
    return this.node({ kind: 'call', name: text, args, column });
  }
}

/** Reads a formula. Throws ExpressionError with the column of the first thing wrong. */
export function parseExpression(text: string): Expression {
  const parser = new Parser(text);
  const root = parser.sum();
  parser.tokens.expectEnd();
  return { text, root, cost: parser.cost };
}

const comparisons = ['<', '<=', '>', '>=', '==', '!='] as const;

/** Reads a constraint: two formulas with one comparison between. Throws ExpressionError. */
export function parseConstraint(text: string): Constraint {
  const parser = new Parser(text);
  const left = parser.sum();
  const sign = parser.tokens.take();
  const op = comparisons.find((known) => known === sign.text);
  if (sign.kind !== 'sign' || op === undefined)
    throw new ExpressionError(sign.column, `a comparison (${comparisons.join(' ')}) should stand here`);
  const leftCost = parser.cost;
  const right = parser.sum();
  parser.tokens.expectEnd();
  return { text, op, left: { text, root: left, cost: leftCost }, right: { text, root: right, cost: parser.cost - leftCost } };
}
