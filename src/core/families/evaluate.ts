import { ExpressionError, type Constraint, type Expression, type Node } from './expression.js';
import type { Region } from '../syllabus.js';
import { functionNamed, type Value } from './functions.js';

export type Values = ReadonlyMap<string, Value>;

function numberOf(node: Node, values: Values, region: Region): number {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'minus':
      return -numberOf(node.operand, values, region);
    case 'name': {
      const value = values.get(node.name);
      if (value === undefined) throw new ExpressionError(node.column, `nothing is called ${node.name}`);
      if (typeof value !== 'number') throw new ExpressionError(node.column, `${node.name} is a list; a number is needed here`);
      return value;
    }
    case 'binary':
      return arithmetic(node.op, numberOf(node.left, values, region), numberOf(node.right, values, region));
    case 'call':
      return called(node, values, region);
  }
}

function arithmetic(op: '+' | '-' | '*' | '/', left: number, right: number): number {
  if (op === '+') return left + right;
  if (op === '-') return left - right;
  return op === '*' ? left * right : left / right;
}

function called(node: Node & { kind: 'call' }, values: Values, region: Region): number {
  const known = functionNamed(node.name);
  if (known === undefined) throw new ExpressionError(node.column, `there is no function ${node.name}`);
  const args = node.args.map((arg, i) => (known.takes[i] === 'list' ? listOf(arg, values) : numberOf(arg, values, region)));
  return known.work(args, region);
}

function listOf(node: Node, values: Values): readonly number[] {
  const value = node.kind === 'name' ? values.get(node.name) : undefined;
  if (value === undefined) throw new ExpressionError(node.column, 'nothing of that name is a list');
  if (typeof value === 'number') throw new ExpressionError(node.column, 'a list is needed here, and this is a number');
  return value;
}

/**
 * Works a formula in double precision, without rounding between steps. The result may be infinite or not a number (a division by
 * zero, a list without a fit): the caller decides what that means. Throws ExpressionError for a name that is missing or of the wrong kind.
 */
export function evaluate(expression: Expression, values: Values, region: Region): number {
  return numberOf(expression.root, values, region);
}

/** Whether a constraint holds; any comparison with a value that is not a number is false. */
export function holds(constraint: Constraint, values: Values, region: Region): boolean {
  const left = evaluate(constraint.left, values, region);
  const right = evaluate(constraint.right, values, region);
  if (Number.isNaN(left) || Number.isNaN(right)) return false;
  switch (constraint.op) {
    case '<':
      return left < right;
    case '<=':
      return left <= right;
    case '>':
      return left > right;
    case '>=':
      return left >= right;
    case '==':
      return left === right;
    case '!=':
      return left !== right;
  }
}

/** The names that a formula uses, with the column of the first use and what must stand there. */
export function namesIn(expression: Expression): { name: string; kind: 'number' | 'list'; column: number }[] {
  const found: { name: string; kind: 'number' | 'list'; column: number }[] = [];
  const visit = (node: Node, kind: 'number' | 'list'): void => {
    if (node.kind === 'name') found.push({ name: node.name, kind, column: node.column });
    else if (node.kind === 'minus') visit(node.operand, 'number');
    else if (node.kind === 'binary') [node.left, node.right].forEach((side) => visit(side, 'number'));
    else if (node.kind === 'call') node.args.forEach((arg, i) => visit(arg, functionNamed(node.name)?.takes[i] ?? 'number'));
  };
  visit(expression.root, 'number');
  return found;
}
