import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formulaLine, formulaOf } from '../../src/core/formula-line.js';
import { mathml } from '../../src/web/view-helpers.js';

/** A line as a screen reader would meet it: tags away, spaces plain. */
const spoken = (markup: readonly string[]): string =>
  markup
    .join(' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#x2061;/g, '')
    .replace(/\s+/g, ' ')
    .trim();

describe('a line of working as words and a formula', () => {
  it('parts the words before and after a formula from it', () => {
    const line = formulaLine('Running current: I = P / V = 2300\u202fW / 230\u202fV = 10\u202fA; round up.');
    expect(line.before).toBe('Running current:');
    expect(spoken(line.mathml)).toBe('I = P V = 2300 W 230 V = 10 A');
    expect(line.mathml.join('').match(/<mfrac>/g)).toHaveLength(2);
    expect(line.after).toBe('round up.');
  });

  it.each([
    ['d = √(k × EIRP / (4 π S))', 1, 1],
    ['t = 8 h / 2^((L − L_ref) / step)', 0, 2],
    ['P = I² × R', 0, 0],
    ['L = 10 × log₁₀(P / 1 mW)', 0, 1],
  ])('sets %s with its roots and fractions', (text, roots, fractions) => {
    const markup = formulaOf(text)?.join('') ?? '';
    expect(markup.match(/<msqrt>/g) ?? []).toHaveLength(roots);
    expect(markup.match(/<mfrac>/g) ?? []).toHaveLength(fractions);
  });

  it('keeps a value with its unit upright, and names in italics with their index', () => {
    expect(formulaOf('V_drop = 1.5\u202fV')).toEqual([
      '<math displaystyle="true"><mrow><msub><mi>V</mi><mtext>drop</mtext></msub><mo>=</mo><mrow><mn>1.5</mn><mtext>\u00a0V</mtext></mrow></mrow></math>',
    ]);
  });

  it.each([
    'The current goes out in one wire and comes back in the other.',
    'up to 700 W: 3 A; above: 13 A',
    'x = = 2',
    'I = (P',
    'a is = to b',
  ])('leaves %s as words', (text) => {
    expect(formulaLine(text)).toEqual({ before: text, mathml: [], after: '' });
  });

  it('never throws, loses no word of prose, and makes nothing but MathML of any text', () => {
    const piecewise = fc
      .array(fc.constantFrom('I', 'V_drop', '=', ' ', '(', ')', '/', '√', '^', '2', '\u202f', 'W', '<b>', '"', ': ', '; ', '−'))
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), piecewise), (text) => {
        const line = formulaLine(text);
        if (line.mathml.length === 0) expect(line.before).toBe(text);
        for (const markup of line.mathml) expect(String(mathml(markup))).toBe(markup);
      }),
      { seed: 20261125, numRuns: 3000 },
    );
  });
});
