import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, holds } from '../../../src/core/families/evaluate.js';
import { ExpressionError, parseConstraint, parseExpression } from '../../../src/core/families/expression.js';
import type { Value } from '../../../src/core/families/functions.js';

const values = new Map<string, Value>([
  ['P', 1150],
  ['V', 230],
  ['LIST', [3, 5, 10, 13]],
  ['KEYS', [1, 2, 4]],
  ['GIVES', [100, 200, 400]],
]);
const worth = (text: string): number => evaluate(parseExpression(text), values, 'uk');

function faultOf(action: () => unknown): ExpressionError {
  try {
    action();
  } catch (error) {
    if (error instanceof ExpressionError) return error;
    throw error;
  }
  throw new Error('it was accepted');
}

describe('the formula language', () => {
  // Expected values by hand.
  it.each([
    ['P / V', 5],
    ['2 + 3 * 4', 14],
    ['(2 + 3) * 4', 20],
    ['20 / 2 / 5', 2],
    ['20 - 5 - 3', 12],
    ['-2 * -3', 6],
    ['- (1 + 2)', -3],
    ['2 - -3', 5],
    ['sqrt(2.25)', 1.5],
    ['pow(2, 10)', 1024],
    ['pow(4, 0.5)', 2],
    ['log10(1000)', 3],
    ['ln(1)', 0],
    ['abs(0 - 7)', 7],
    ['min(2, 3) + max(2, 3)', 5],
    ['atanDeg(1)', 45],
    ['atan(1) * 4 / pi', 1],
    ['nextUp(5, LIST)', 5],
    ['nextUp(5.1, LIST)', 10],
    ['nextUp(14, LIST)', NaN],
    ['nextDown(9, LIST)', 5],
    ['nextDown(2, LIST)', NaN],
    ['downOrZero(2, LIST)', 0],
    ['downOrZero(3, LIST)', 3],
    ['stepUp(5, LIST)', 10],
    ['stepUp(13, LIST)', NaN],
    ['stepDown(5, LIST)', 3],
    ['stepDown(3, LIST)', NaN],
    ['pick(1.5, KEYS, GIVES)', 200],
    ['pick(5, KEYS, GIVES)', NaN],
    ['pickLE(2, KEYS, GIVES)', 100],
    ['look(4, KEYS, GIVES)', 400],
    ['look(3, KEYS, GIVES)', NaN],
    ['P / 0', Infinity],
  ])('works %s as %d', (text, expected) => {
    const got = worth(text);
    expect(Object.is(got, expected) || Math.abs(got - expected) < 1e-12).toBe(true);
  });

  it.each([
    ['P >= 1150', true],
    ['P > 1150', false],
    ['P <= V * 5', true],
    ['P < V * 5', false],
    ['P / V == 5', true],
    ['P / V != 5', false],
    ['nextUp(14, LIST) >= 1', false],
    ['nextUp(14, LIST) != 1', false],
  ])('says of the constraint %s: %s', (text, expected) => {
    expect(holds(parseConstraint(text), values, 'uk')).toBe(expected);
  });

  it('names the column of the first thing wrong', () => {
    expect(faultOf(() => parseExpression('P + * V')).column).toBe(5);
    expect(faultOf(() => parseExpression('P + V)')).column).toBe(6);
    expect(faultOf(() => parseExpression('(P + V')).column).toBe(7);
    expect(faultOf(() => worth('P + Q')).column).toBe(5);
    expect(faultOf(() => worth('2 * LIST')).column).toBe(5);
    expect(faultOf(() => worth('nextUp(1, P)')).column).toBe(11);
  });
});

describe('hostile formulas are refused when they are read', () => {
  // The list of the security checklist, with the column at which each goes wrong.
  it.each([
    ['constructor', 1],
    ['__proto__', 1],
    ['P.constructor', 2],
    ['P["x"]', 2],
    ['import("fs")', 8],
    ['`${1}`', 1],
    ['\\u0063onstructor', 1],
    ['toString', 1],
    ['toString()', 1],
    ['hasOwnProperty(P)', 1],
    ['a=1', 2],
    ['P=1', 2],
    ['P;P', 2],
    ['P,P', 3],
    ['9^9^9^9', 2],
    ['9**9', 3],
    ['1e400', 1],
    ['2P', 1],
    ['P V', 3],
    ['P < V', 3],
    ['0x10', 1],
    ['1.', 2],
    ['.5', 1],
    ['sqrt', 1],
    ['sqrt()', 1],
    ['sqrt(1, 2)', 1],
    ['nextUp(P, 3 + 4)', 11],
    ['"text"', 1],
    ['P\u00a0+ 1', 2],
    ['P\n+ 1', 2],
    ['', 1],
    [' ', 1],
    ['max(1 2)', 7],
    ['max((1, 2), 3)', 1],
    ['(P)(1)', 2],
    ['2(3)', 3],
    ['this', 1],
  ])('%j at column %i', (text, column) => {
    expect(faultOf(() => parseExpression(text)).column).toBe(column);
  });

  it('and a constraint needs one comparison, not a chain', () => {
    expect(faultOf(() => parseConstraint('P')).column).toBe(2);
    expect(faultOf(() => parseConstraint('1 < P < 3')).column).toBe(3);
  });

  it.each([
    ['3,000 brackets', '('.repeat(3000)],
    ['40 signs', `${'-'.repeat(40)}1`],
    ['40 roots', `${'sqrt('.repeat(40)}1${')'.repeat(40)}`],
    ['20,000 terms', '1+'.repeat(20_000) + '1'],
    ['120 terms', '1+'.repeat(120) + '1'],
    ['a number of 400 digits', '9'.repeat(400)],
  ])('%s, in under 100 ms', (_what, text) => {
    const start = performance.now();
    expect(() => parseExpression(text)).toThrow(ExpressionError);
    expect(performance.now() - start).toBeLessThan(100);
  });
});

it('brackets that hold nothing more cost nothing', () => {
  expect(parseExpression(`${'('.repeat(40)}1${')'.repeat(40)}`).cost).toBe(1);
});

describe('any text at all', () => {
  const alphabet = fc.constantFrom(
    ...'PVLIST0123456789.+-*/(),<>=!{}[]^_"\\ \n',
    'sqrt(',
    'pow(',
    'nextUp(',
    'LIST',
    'constructor',
    '__proto__',
    'pi',
    '\u2212',
    '\ud800',
  );

  it('is either refused with a column inside it, or worked to a number', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 600, unit: 'binary' }),
          fc.array(alphabet, { maxLength: 60 }).map((parts) => parts.join('')),
        ),
        (text) => {
          let outcome: unknown;
          try {
            outcome = worth(text);
          } catch (error) {
            outcome = error;
          }
          const fine =
            outcome instanceof ExpressionError ? outcome.column >= 1 && outcome.column <= text.length + 1 : typeof outcome === 'number';
          if (!fine) throw outcome;
          looked += 1;
        },
      ),
      { seed: 20261125, numRuns: 1500 },
    );
    expect(looked).toBe(1500);
  });

  it('that is sound arithmetic is worked by the rules of school: products before sums, each from the left', () => {
    interface Piece {
      text: string;
      value: number;
    }
    const chain = (
      piece: fc.Arbitrary<Piece>,
      [first, second]: [string, string],
      work: (op: string, a: number, b: number) => number,
    ): fc.Arbitrary<Piece> =>
      fc
        .tuple(piece, fc.array(fc.tuple(fc.constantFrom(first, second), piece), { maxLength: 4 }))
        .map(([start, rest]) =>
          rest.reduce(
            (left, [op, right]) => ({ text: `${left.text} ${op} ${right.text}`, value: work(op, left.value, right.value) }),
            start,
          ),
        );
    const sumOf = (piece: fc.Arbitrary<Piece>): fc.Arbitrary<Piece> =>
      chain(
        chain(piece, ['*', '/'], (op, a, b) => (op === '*' ? a * b : a / b)),
        ['+', '-'],
        (op, a, b) => (op === '+' ? a + b : a - b),
      );
    const figure = fc.integer({ min: 1, max: 999 }).map((value) => ({ text: String(value), value }));
    const bracketed = sumOf(figure).map(({ text, value }) => ({ text: `(${text})`, value }));
    let worked = 0;
    fc.assert(
      fc.property(
        sumOf(fc.oneof(figure, bracketed)).filter(({ text }) => text.length <= 300),
        ({ text, value }) => {
          expect(worth(text)).toBe(value);
          worked += 1;
        },
      ),
      { seed: 20261125, numRuns: 500 },
    );
    expect(worked).toBe(500);
  });
});
